import type { CutList } from '../../../server/schemas/cuts.ts';

type Cut = CutList['cuts'][number];

/** A cut of a list, by what matters to a test. */
export function cutAt(id: string, change: Partial<Cut> = {}): Cut {
  return {
    id,
    azimuthDeg: null,
    clockFromAbove: null,
    clockInPhoto: 3,
    heightMm: 120.4,
    excessMm: 22,
    plusMinusMm: 6.4,
    takeOffMm: 22.3,
    takeOffPercent: 15,
    stop: 'tip',
    kind: 'shoot',
    tipPx: [300, 100],
    cutPx: [280, 110],
    tipMm: null,
    cutMm: null,
    aboveShootPx: null,
    why: 'Its tip stands out.',
    sure: 'likely',
    state: 'open',
    chosen: true,
    note: '',
    marks: [],
    ...change,
  };
}

const SCORES = {
  roundness: { score: 70, plusMinus: 2 },
  symmetry: { score: 88, plusMinus: 1 },
  lopsidedness: { percent: -12.4, plusMinus: 1.6, side: 'left' },
} as const;

export function listOf(cuts: readonly Cut[], change: Partial<CutList> = {}): CutList {
  return {
    sittingId: 'sitting',
    plantId: 'plant',
    day: '2026-06-07' as CutList['day'],
    from: 'one-photo',
    viewIds: ['view'],
    ball: null,
    ballWhyNot: null,
    growth: null,
    growthWhyNot: null,
    cuts: [...cuts],
    before: SCORES,
    after: null,
    afterWhyNot: null,
    lean: null,
    views: [],
    outlinesAfter: [],
    unseen: [],
    worked: null,
    advice: [],
    ...change,
  };
}
