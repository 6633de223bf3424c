import { addDays, type Day } from '../../core/day/day.ts';
import type { LightPlace } from '../../core/turned/turn-advice.ts';
import type { Sitting, View } from '../schemas/sitting.ts';
import { type BriefView, briefViews } from '../store/brief-views.ts';
import type { Database } from '../store/database.ts';
import { joiningsOfNewestSittings } from '../store/joinings.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { viewsOfNewestSittings } from '../store/views.ts';
import { sittingAnswers } from './sitting-answer.ts';

/** A photo as advice, trend and condition see it; in older sittings its report is brief (server/store/brief-views.ts). */
export type SeenView = Pick<
  View,
  'id' | 'standId' | 'turnDeg' | 'state' | 'report' | 'afterWork' | 'normalLeafFrom'
>;

/** A sitting as advice, trend and condition see it. */
export interface SeenSitting extends Pick<Sitting, 'id' | 'day' | 'leftOut' | 'turned'> {
  readonly views: readonly SeenView[];
}

/** A plant's sittings, newest first. */
export interface SeenSittings {
  readonly all: readonly SeenSitting[];
  /** The newest of them as the screen gets them; only the first `drawn` with what is drawn on their photos. */
  readonly whole: readonly Sitting[];
}

/** Whether a plant looks limp is told by sittings so far back; a plan or a shape older than three weeks advises nothing. */
const ASKED_WHOLE_DAYS = 35;

/** Thousands of brief reports a plant; the plants looked at last are the ones looked at again. */
const rememberedBriefs = rememberingPlants<readonly SeenSitting[]>({ most: 12 });

/** Every sitting of a plant in brief, newest first. */
export function briefSittings(db: Database, plantId: string): readonly SeenSitting[] {
  return rememberedBriefs(db, { plantId, asked: [] }, () => together(briefViews(db, plantId)));
}

/**
 * A plant's newest sittings: whole as far back as something is asked of them that brief reports do not tell, brief before.
 *
 * @param newest how many, `null` for all
 * @param drawn how many of the newest come with what is drawn on their photos
 */
export function seenSittings(
  db: Database,
  plantId: string,
  {
    newest,
    drawn,
    today,
    light,
  }: {
    readonly newest: number | null;
    readonly drawn: number;
    readonly today: Day;
    readonly light: LightPlace | null;
  },
): SeenSittings {
  const brief = newest === null ? briefSittings(db, plantId) : together(briefViews(db, plantId, newest));
  const count = Math.min(brief.length, Math.max(drawn, askedWhole(brief, today)));
  const views = [
    ...viewsOfNewestSittings(db, plantId, { count: Math.min(drawn, count) }),
    ...viewsOfNewestSittings(db, plantId, {
      count: count - Math.min(drawn, count),
      after: drawn,
      drawn: false,
    }),
  ];
  const joinings = joiningsOfNewestSittings(db, plantId, { count });
  const whole = sittingAnswers(views, { joinings, light });
  return { all: [...whole, ...brief.slice(count)], whole };
}

/** How many of the newest sittings are asked for what only whole reports tell. */
function askedWhole(brief: readonly SeenSitting[], today: Day): number {
  const measured = brief.findIndex(({ views }) => views.some(({ report }) => report?.status === 'measured'));
  const from = [today, brief[measured]?.day ?? today].sort()[0] as Day;
  const recent = brief.findLastIndex(({ day }) => day >= addDays(from, -ASKED_WHOLE_DAYS));
  const counting = (tells: (view: SeenView) => boolean) =>
    brief.findIndex(({ leftOut, views }) => leftOut === null && views.some(tells));
  const flower = counting(({ report }) => report?.flower != null);
  const gaps = counting(
    ({ report, afterWork }) => report?.gaps != null && report.notCompared === null && !afterWork,
  );
  return Math.max(measured, recent, flower, gaps) + 1;
}

function together(views: readonly BriefView[]): SeenSitting[] {
  const sittings = new Map<string, SeenSitting & { readonly views: SeenView[] }>();
  for (const { sittingId, day, leftOut, ...view } of views) {
    const known = sittings.get(sittingId);
    if (known) known.views.push(view);
    else sittings.set(sittingId, { id: sittingId, day, leftOut, turned: null, views: [view] });
  }
  return [...sittings.values()];
}
