import type { HullReport } from '../../../core/turned/measure-hull.ts';
import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import { placeWords } from '../../../core/turned/place-words.ts';
import { numberWords, type Reading } from '../measures/reading.ts';
import { degreeWords } from '../words/turn-words.ts';

export const TURNED_MEASURES = ['lean', 'reach', 'ball', 'outOfRound', 'volume', 'sphericity'] as const;
export type TurnedMeasure = (typeof TURNED_MEASURES)[number];

export const TURNED_NAMES: Record<TurnedMeasure, string> = {
  lean: 'Lopsidedness, all round',
  reach: 'Reach',
  ball: 'Ball, all round',
  outOfRound: 'Out of round, all round',
  volume: 'Volume',
  sphericity: 'Sphericity',
};

/** A number of a turned sitting as the screen shows it, its value already in words. */
export interface TurnedReading extends Omit<Reading, 'value'> {
  readonly value: string | null;
}

const UNKNOWN: TurnedReading = { value: null, plusMinus: null, unit: '', aside: null };

export function readTurned({ plan }: TurnedReport, measure: TurnedMeasure): TurnedReading {
  if (measure === 'lean') return lean(plan.lopsidedness);
  if (measure === 'reach') return reach(plan.reach);
  return plan.hull === null ? UNKNOWN : ofHull(plan.hull, measure);
}

function lean(vector: TurnedReport['plan']['lopsidedness']): TurnedReading {
  if (vector === null) return UNKNOWN;
  return {
    value: numberWords(vector.percent, 'lopsidedness'),
    plusMinus: vector.plusMinus,
    unit: '%',
    aside: vector.even
      ? 'even within its plus-minus'
      : `heavy side ${placeWords(vector.azimuthDeg)}, ±${degreeWords(Math.round(vector.plusMinusDeg))}`,
  };
}

function reach(all: TurnedReport['plan']['reach']): TurnedReading {
  if (all.length === 0) return UNKNOWN;
  const inMm = all.every(({ mm }) => mm !== null);
  const values = all.map(({ mm, percent }) => (inMm ? (mm ?? 0) : percent));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const widest = Math.max(
    ...all.map(({ plusMinusMm, plusMinusPercent }) => (inMm ? (plusMinusMm ?? 0) : plusMinusPercent)),
  );
  const at = (value: number) => placeWords(all[values.indexOf(value)]?.azimuthDeg ?? 0);
  return {
    value: `${least.toFixed(0)}–${most.toFixed(0)}`,
    plusMinus: widest,
    unit: inMm ? 'mm' : '% of the ball',
    aside: `least at ${at(least)}, most at ${at(most)}`,
  };
}

function ofHull(hull: HullReport, measure: Exclude<TurnedMeasure, 'lean' | 'reach'>): TurnedReading {
  const plain = (value: string | null, unit: string, aside: string | null): TurnedReading =>
    value === null ? UNKNOWN : { value, plusMinus: null, unit, aside };
  switch (measure) {
    case 'ball': {
      const { radiusMm, onAxisRadiusMm, centreMm } = hull;
      const beside = centreMm === null ? null : Math.hypot(centreMm[0], centreMm[1]);
      return plain(
        radiusMm === null ? null : (2 * radiusMm).toFixed(0),
        'mm across',
        onAxisRadiusMm === null || beside === null
          ? null
          : `its middle ${beside.toFixed(0)} mm beside the axis; held on the axis it is ${(2 * onAxisRadiusMm).toFixed(0)} mm`,
      );
    }
    case 'outOfRound': {
      const { outOfRoundMm: mm, outOfRoundPercent: percent } = hull;
      const share = percent === null ? null : `${percent.toFixed(0)} % of the ball’s radius`;
      return mm === null
        ? plain(percent?.toFixed(0) ?? null, '% of the ball’s radius', null)
        : plain(numberWords(mm, 'outOfRound'), 'mm', share);
    }
    case 'volume':
      return plain(
        volumeWords(hull.correctedVolumeMl),
        hull.correctedVolumeMl !== null && hull.correctedVolumeMl >= 1000 ? 'litres' : 'ml',
        `the hull itself reads ${((hull.bias - 1) * 100).toFixed(1)} % more`,
      );
    case 'sphericity':
      return plain(
        hull.sphericity.toFixed(2),
        '',
        `a perfect ball would read ${hull.sphericityOfABall.toFixed(2)} with these views`,
      );
  }
}

/** "840" ml below a litre, "2.4" litres above. */
function volumeWords(ml: number | null): string | null {
  if (ml === null) return null;
  return ml >= 1000 ? (ml / 1000).toFixed(1) : ml.toFixed(0);
}
