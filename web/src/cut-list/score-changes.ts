import { changeSince } from '../../../core/trend/change-since.ts';
import { placeWords } from '../../../core/turned/place-words.ts';
import type { CutList, Scores } from '../../../server/schemas/cuts.ts';
import { type Measure, numberWords, plusMinusWords } from '../measures/reading.ts';

/** One score as it is and as it would be. */
export interface ScoreChange {
  readonly measure: Extract<Measure, 'roundness' | 'symmetry' | 'lopsidedness'>;
  readonly before: ScoreReading | null;
  readonly after: ScoreReading | null;
  /** "better", "worse", "no change"; `null` where one of the two is not known. */
  readonly sense: 'better' | 'worse' | 'no change' | null;
}

export interface ScoreReading {
  readonly figure: string;
  readonly plusMinus: string | null;
  /** `null` for a score of 100. */
  readonly unit: '%' | null;
  /** The side it hangs to. */
  readonly aside: string | null;
}

/** The three scores before and after the chosen cuts. */
export function scoreChanges(list: CutList): ScoreChange[] {
  const { before, after } = list;
  return [
    scoreChange('roundness', before.roundness, after?.roundness ?? null),
    scoreChange('symmetry', before.symmetry, after?.symmetry ?? null),
    list.lean === null ? leanInPhoto(before, after) : leanInTheRound(list.lean),
  ];
}

type Score = Scores['roundness'];

function scoreChange(measure: 'roundness' | 'symmetry', before: Score, after: Score): ScoreChange {
  const reading = (score: Score): ScoreReading | null =>
    score && {
      figure: numberWords(score.score, measure),
      plusMinus: plusMinusWords(score.plusMinus),
      unit: null,
      aside: null,
    };
  const sense =
    before &&
    after &&
    senseOf(
      { value: before.score, plusMinus: before.plusMinus },
      { value: after.score, plusMinus: after.plusMinus },
      true,
    );
  return { measure, before: reading(before), after: reading(after), sense };
}

function leanInPhoto(before: Scores, after: Scores | null): ScoreChange {
  const reading = (lean: Scores['lopsidedness']): ScoreReading | null =>
    lean && {
      figure: numberWords(Math.abs(lean.percent), 'lopsidedness'),
      plusMinus: plusMinusWords(lean.plusMinus),
      unit: '%',
      aside: lean.side === 'even' ? 'even' : `to the ${lean.side}`,
    };
  const [from, to] = [before.lopsidedness, after?.lopsidedness ?? null];
  const size = (lean: NonNullable<Scores['lopsidedness']>) => ({
    value: Math.abs(lean.percent),
    plusMinus: lean.plusMinus,
  });
  return {
    measure: 'lopsidedness',
    before: reading(from),
    after: reading(to),
    sense: from && to && senseOf(size(from), size(to), false),
  };
}

function leanInTheRound({ before, after }: NonNullable<CutList['lean']>): ScoreChange {
  type Lean = typeof before;
  const reading = (lean: Lean): ScoreReading | null =>
    lean && {
      figure: numberWords(lean.percent, 'lopsidedness'),
      plusMinus: plusMinusWords(lean.plusMinus),
      unit: '%',
      aside: lean.even ? 'even' : `to ${placeWords(lean.azimuthDeg)}`,
    };
  const size = (lean: NonNullable<Lean>) => ({ value: lean.percent, plusMinus: lean.plusMinus });
  return {
    measure: 'lopsidedness',
    before: reading(before),
    after: reading(after),
    sense: before && after && senseOf(size(before), size(after), false),
  };
}

type Repeatable = Parameters<typeof changeSince>[0];

function senseOf(before: Repeatable, after: Repeatable, moreIsBetter: boolean): ScoreChange['sense'] {
  const { direction } = changeSince(before, after);
  if (direction === 'none') return 'no change';
  return (direction === 'up') === moreIsBetter ? 'better' : 'worse';
}
