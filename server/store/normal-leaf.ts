import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { learnNormalLeaf, type NormalLeaf } from '../../core/foliage/normal-leaf.ts';
import { METHOD_VERSION } from '../../core/method-version.ts';
import { daySchema } from '../schemas/basics.ts';
import { jsonText } from './columns.ts';
import { allRows, type Database, run } from './database.ts';
import { healthyDays } from './healthy-days.ts';

/** A plant's normal leaf with the days of the sittings it was learned from, oldest first. */
export interface LearnedNormal {
  readonly days: readonly Day[];
  readonly leaf: NormalLeaf;
}

/**
 * Sittings that set a plant's normal leaf. One alone may stand in odd light; three are there after a fortnight, before plants are usually
 * far gone.
 */
export const LEARNED_FROM_SITTINGS = 3;

const lookSchema = z.object({
  photos: z.int().positive(),
  from: z.enum(['sheet', 'backdrop', 'none']),
  leafColour: z.object({ l: z.number(), a: z.number(), b: z.number() }),
  hueShares: z.array(z.number()),
}) satisfies z.ZodType<NormalLeaf>;
const dayRow = z.object({ day: daySchema, from: lookSchema.shape.from });
const lookRow = z.object({ look: jsonText.pipe(lookSchema) });

/** The newest measurements of views that count and whose leaf's look is known. */
const LOOKS = `FROM views
  JOIN sittings ON sittings.id = views.sitting_id
  JOIN measurements ON measurements.id =
    (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
  WHERE sittings.plant_id = ? AND views.removed_at IS NULL AND sittings.left_out IS NULL
    AND leaf_look IS NOT NULL AND json_extract(report, '$.notCompared') IS NULL`;

/** Days with a look, oldest first, each with where its white is known from. */
export function daysWithLook(db: Database, plantId: string): z.infer<typeof dayRow>[] {
  return allRows(
    db,
    dayRow,
    `SELECT sittings.day, min(look_from) AS "from"
     FROM sittings JOIN views ON views.sitting_id = sittings.id JOIN readings ON readings.view_id = views.id
     WHERE sittings.plant_id = ? AND views.removed_at IS NULL AND sittings.left_out IS NULL
       AND look_from IS NOT NULL AND not_compared IS NULL
     GROUP BY sittings.day ORDER BY sittings.day`,
    plantId,
  );
}

/**
 * The days that a photo's normal leaf is learned from: the last healthy ones before it as the grower tells, else the plant's first ones.
 *
 * @param before the photo's day: none teaches itself; `null` for a photo to come
 * @returns oldest first; of one white throughout; empty while too few are known
 */
export function daysToLearnFrom(
  days: readonly z.infer<typeof dayRow>[],
  healthy: readonly Day[],
  before: Day | null,
): Day[] {
  const known = days.filter(({ day }) => before === null || day < before);
  const told = known.filter(({ day }) => healthy.includes(day));
  const newest = told.at(-1);
  if (newest !== undefined) {
    return told
      .filter(({ from }) => from === newest.from)
      .slice(-LEARNED_FROM_SITTINGS)
      .map(({ day }) => day);
  }
  const byWhite = new Map<string, Day[]>();
  for (const { day, from } of known) {
    const alike = [...(byWhite.get(from) ?? []), day];
    if (alike.length === LEARNED_FROM_SITTINGS) return alike;
    byWhite.set(from, alike);
  }
  return [];
}

/** What a photo of that day is judged by; `null`: by what is usual. */
export function normalLeafFor(db: Database, plantId: string, before: Day): LearnedNormal | null {
  return learnedFrom(
    db,
    plantId,
    daysToLearnFrom(daysWithLook(db, plantId), healthyDays(db, plantId), before),
  );
}

function learnedFrom(db: Database, plantId: string, days: readonly Day[]): LearnedNormal | null {
  const looks = days.flatMap((day) =>
    allRows(
      db,
      lookRow,
      `SELECT leaf_look AS look ${LOOKS} AND sittings.day = ? ORDER BY turn_deg, received_at, views.rowid`,
      plantId,
      day,
    ),
  );
  const leaf = looks.reduce<NormalLeaf | null>((known, { look }) => learnNormalLeaf(known, look), null);
  return leaf === null ? null : { days, leaf: rounded(leaf) };
}

/** As it is kept: four digits say all, and the same looks give the same text. */
export function rounded({ photos, from, leafColour, hueShares }: NormalLeaf): NormalLeaf {
  const to = (digits: number) => (value: number) => Number(value.toFixed(digits));
  const { l, a, b } = leafColour;
  const colour = to(2);
  return {
    photos,
    from,
    leafColour: { l: colour(l), a: colour(a), b: colour(b) },
    hueShares: hueShares.map(to(5)),
  };
}

const measuredRow = z.object({ day: daySchema });

/**
 * Quietly lets photos be measured anew that were judged by another normal leaf than today's. Call it after a photo was measured, left out,
 * moved, removed or brought back, and after a healthy day was told. What is known beside the leaf stays as it was used last, and no
 * photo's look hangs on a normal, so that this comes to an end. Photos of an older method are judged by today's normal when
 * they are measured anew, which the grower may have stopped.
 *
 * @returns whether any waits now
 */
export function settleNormalLeaf(db: Database, plantId: string): boolean {
  const looks = daysWithLook(db, plantId);
  const healthy = healthyDays(db, plantId);
  const days = allRows(
    db,
    measuredRow,
    `SELECT DISTINCT sittings.day FROM views JOIN sittings ON sittings.id = views.sitting_id
     WHERE plant_id = ? AND removed_at IS NULL AND state = 'measured'`,
    plantId,
  );
  const byLessons = new Map<string, { readonly from: readonly Day[]; readonly judged: Day[] }>();
  for (const { day } of days) {
    const from = daysToLearnFrom(looks, healthy, day);
    const alike = byLessons.get(from.join()) ?? { from, judged: [] };
    alike.judged.push(day);
    byLessons.set(from.join(), alike);
  }
  let queued = 0;
  for (const { from, judged } of byLessons.values()) {
    queued += run(
      db,
      `UPDATE views SET state = 'received', failure = NULL, revision = revision + 1, quiet = 1
       WHERE removed_at IS NULL AND state = 'measured'
         AND sitting_id IN (SELECT id FROM sittings WHERE plant_id = ? AND day IN (SELECT value FROM json_each(?)))
         AND EXISTS (SELECT 1 FROM measurements
           WHERE id = (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
             AND method_version = ? AND leaf_look IS NOT NULL AND normal_leaf IS NOT ?)`,
      plantId,
      JSON.stringify(judged),
      METHOD_VERSION,
      textOf(learnedFrom(db, plantId, from)),
    );
  }
  return queued > 0;
}

/** A normal as it is kept beside what was judged by it. */
export function textOf(normal: LearnedNormal | null): string | null {
  return normal && JSON.stringify(normal);
}
