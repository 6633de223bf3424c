import { type BloomOffer, bloomOffers } from '../../core/bloom/bloom-offers.ts';
import { flowerHeads, usualHeadSize } from '../../core/bloom/flower-heads.ts';
import type { PlantKind } from '../../core/plant.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { SeenSitting } from '../bench/seen-sitting.ts';
import type { PlantBloom } from '../schemas/condition.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import { bloomWordsOf } from '../store/bloom-words.ts';
import type { Database } from '../store/database.ts';
import { type BloomSoFar, bloomSoFar } from './bloom-so-far.ts';

type ToldBloom = Extract<PlantBloom, { state: 'told' }>;

/**
 * The bloom that is going on, to be drawn and read.
 *
 * @param sittings oldest first
 */
export function bloomAnswer(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  sittings: readonly SeenSitting[],
): PlantBloom | null {
  const so = bloomSoFar(facts, plant);
  if (so.readings.length === 0) return null;
  const { bloom, since } = so;
  const readings = [...so.readings];
  if (!bloom.ok) return { state: 'none-yet', reason: bloom.reason, hint: bloom.hint, readings, since };
  const { stage, firstColour, half, full, fading, fullShare, sureness, words, why, restsOn } = bloom;
  return {
    state: 'told',
    readings,
    since,
    stage,
    firstColour,
    half,
    full,
    fading,
    fullShare,
    sureness,
    words,
    why,
    restsOn,
    curve: so.curve(),
    heads: headsSeen(sittings, plant.kind),
    againstShow: so.againstShow,
    offers: offersOf(db, facts, plant, so),
  };
}

/** Dates of the plant's bloom that may go to its log, as they stand now. */
export function bloomOffersOf(db: Database, facts: SeasonFacts, plant: AimedPlant): BloomOffer[] {
  return offersOf(db, facts, plant, bloomSoFar(facts, plant));
}

function offersOf(db: Database, facts: SeasonFacts, { id }: AimedPlant, so: BloomSoFar): BloomOffer[] {
  const bloom = so.forRecords();
  return bloom === null
    ? []
    : bloomOffers(bloom, { log: facts.notes.get(id), from: so.from, words: bloomWordsOf(db, id) });
}

/** From the side of the newest sitting that shows most: sides added up would count the same heads twice. */
function headsSeen(sittings: readonly SeenSitting[], kind: PlantKind): ToldBloom['heads'] {
  const newest = sittings.findLast(
    ({ leftOut, views }) => leftOut === null && views.some(({ report }) => report?.flower != null),
  );
  if (newest === undefined) return null;
  const [most] = newest.views
    .flatMap(({ id, report }) =>
      report?.flower?.patchesMm2 == null
        ? []
        : [{ viewId: id, ...flowerHeads(report.flower.patchesMm2, usualHeadSize(kind)) }],
    )
    .sort((one, other) => other.most - one.most || other.least - one.least);
  if (most === undefined) return null;
  return { day: newest.day, ...most, words: headWords(most) };
}

function headWords({ least, most }: { least: number; most: number }): string {
  if (most === 0) return 'No flower head is seen.';
  const count = least === most ? String(least) : `${least} to ${most}`;
  return `${count} flower ${most === 1 ? 'head is' : 'heads are'} seen from this side, by the size usual for the kind (a guess); those behind are not counted.`;
}
