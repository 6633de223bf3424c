import { type BallToCutTo, ballToCutTo, type NoBallToCutTo } from '../../core/cut/ball-to-cut-to.ts';
import type { Cut } from '../../core/cut/cut.ts';
import { cutAdviceWords } from '../../core/cut/cut-advice-words.ts';
import { cutList } from '../../core/cut/cut-list.ts';
import type { ExpectedGrowth } from '../../core/growth/expected-growth.ts';
import type { Growth, NoGrowth } from '../../core/growth/growth.ts';
import type { StoppedToday } from '../../core/season/stop-today.ts';
import type { CutTo } from '../schemas/cut-to.ts';
import type { CutList, CutMark } from '../schemas/cuts.ts';
import { seasonFacts } from '../season/season-facts.ts';
import type { Services } from '../services.ts';
import { cutMarksOfSitting } from '../store/cut-marks.ts';
import type { SittingRow } from '../store/sittings.ts';
import { type ViewRow, viewsOfPlant } from '../store/views.ts';
import type { AimedPlant } from './aimed-plant.ts';
import { beforeAndAfter } from './before-and-after.ts';
import { type CutBasis, cutBasis, type NoCutBasis } from './cut-basis.ts';
import { markedCuts } from './marked-cuts.ts';
import { type GrowthSoFar, plantGrowth } from './plant-growth.ts';
import { workDone } from './work-done.ts';

/** The cuts of a sitting, each with what the grower did or wrote of it. */
export interface ListedCuts {
  readonly from: CutBasis['from'];
  readonly basis: CutBasis;
  readonly cuts: readonly (Cut & CutMark)[];
  /** By the cut's name: the name under which its mark is kept. */
  readonly keptAs: ReadonlyMap<string, string | null>;
  readonly ball: BallToCutTo | NoBallToCutTo;
  readonly soFar: GrowthSoFar;
  /** The plant with the day that the list is read for. */
  readonly stoppedThen: StoppedToday;
  /** Of the whole plant, newest day first. */
  readonly views: readonly ViewRow[];
}

/** What to shorten, down to which ball. */
export async function listedCuts(
  services: Pick<Services, 'db' | 'stemsOfSitting' | 'today'>,
  plant: AimedPlant,
  sitting: SittingRow,
): Promise<ListedCuts | NoCutBasis> {
  const { db, today } = services;
  const views = viewsOfPlant(db, plant.id);
  const basis = await cutBasis(services, sitting.id, ofSitting(views, sitting));
  if (basis.from === null) return basis;
  // The newest sitting is worked now; an earlier one is read as on its day.
  const isNewest = views.every(({ day }) => day <= sitting.day);
  const asOf = isNewest ? today() : sitting.day;
  const { id: plantId, kind, variety, showDay, cutTo } = plant;
  const knowledge = seasonFacts(db, asOf).knowledgeOf(kind);
  const stoppedThen = { kind, today: asOf, showDay, season: { plantId, variety, knowledge } };
  const soFar = plantGrowth(db, plant, asOf);
  const ball = ballOf(cutTo, basis, stoppedThen, soFar.growth);
  const marked = markedCuts(
    cutsOf(basis, ball),
    cutMarksOfSitting(db, sitting.id),
    basis.from === 'one-photo' ? (basis.report.ball?.radiusPx ?? null) : null,
  );
  return {
    from: basis.from,
    basis,
    cuts: marked.map(({ cut }) => cut),
    keptAs: new Map(marked.map(({ cut, keptAs }) => [cut.id, keptAs])),
    ball,
    soFar,
    stoppedThen,
    views,
  };
}

/** The cut list of a sitting as the screen gets it: the cuts, the plant before and after them, and what was done so far. */
export async function cutListAnswer(
  services: Pick<Services, 'db' | 'stemsOfSitting' | 'foretellCuts'>,
  plant: AimedPlant,
  sitting: SittingRow,
  { basis, cuts, ball, soFar: { growth, told }, stoppedThen, views }: ListedCuts,
): Promise<CutList> {
  const foretold = await beforeAndAfter(services, {
    sittingId: sitting.id,
    views: ofSitting(views, sitting),
    basis,
    cuts,
  });
  return {
    sittingId: sitting.id,
    plantId: plant.id,
    day: sitting.day,
    from: basis.from,
    viewIds: [...basis.viewIds],
    ...ballAnswer(ball),
    growth: told,
    growthWhyNot: growth.ok ? null : growth.hint,
    ...foretold,
    unseen: [...basis.unseen],
    worked: await workDone(services, { sitting, views, basis, cuts: foretold.cuts }),
    advice: adviceBeside(cuts, stoppedThen),
  };
}

/** The views of a sitting that show the plant before the work. */
function ofSitting(views: readonly ViewRow[], { id }: SittingRow): ViewRow[] {
  return views.filter(({ sittingId, afterWork }) => sittingId === id && !afterWork);
}

function cutsOf(basis: CutBasis, ball: BallToCutTo | NoBallToCutTo): Cut[] {
  // Evened up, a stem ends where the other tips do: no ball in mm is needed for that.
  const other = ball.ok && ball.way !== 'even-up' ? ball : null;
  return basis.from === 'one-photo'
    ? cutList({ from: 'one-photo', report: basis.report, ball: other })
    : cutList({ from: 'turned', stems: basis.stems, present: basis.present, ball: other });
}

/** The ball to cut to, or the sentence that says why there is none and what to do. */
function ballOf(
  cutTo: CutTo,
  { present }: CutBasis,
  stoppedThen: StoppedToday,
  growth: Growth | NoGrowth,
): BallToCutTo | NoBallToCutTo {
  const plantNow = {
    ballRadiusMm: present.radiusMm,
    plusMinusMm: present.plusMinusMm,
    ...stoppedThen,
  };
  if (cutTo.kind !== 'show') return ballToCutTo(cutTo, plantNow);
  // Growth is told of every plant that was once measured in mm; without it there is no scale.
  if (!growth.ok && growth.afterNextStop === null) {
    return { ok: false, reason: 'no-scale', hint: growth.hint };
  }
  return ballToCutTo({ ...cutTo, growth: growth.afterNextStop as ExpectedGrowth }, plantNow);
}

function ballAnswer(ball: BallToCutTo | NoBallToCutTo): Pick<CutList, 'ball' | 'ballWhyNot'> {
  if (ball.ok) {
    const { ok: _, ...answer } = ball;
    return { ball: answer, ballWhyNot: null };
  }
  return { ball: null, ballWhyNot: `${ball.hint} This list evens the plant up to its present ball.` };
}

function adviceBeside(cuts: readonly Cut[], stoppedThen: StoppedToday): CutList['advice'] {
  const { howTo, caution, bloom } = cutAdviceWords(cuts, stoppedThen);
  return [
    ...howTo.map((words) => ({ words, caution: false })),
    ...(bloom === null ? [] : [{ words: bloom, caution: true }]),
    { words: caution, caution: true },
  ];
}
