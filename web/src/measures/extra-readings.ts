import type { PhotoReport } from '../../../core/report.ts';
import { type Meaning, PLUS_MINUS_UNKNOWN } from './meanings.ts';

export const EXTRA_MEASURES = [
  'bestAxis',
  'circularity',
  'areaRoundness',
  'circumscribed',
  'inscribed',
  'deviations',
] as const;
export type ExtraMeasure = (typeof EXTRA_MEASURES)[number];

/** A number of the folded list as the screen shows it; `null` value when the report does not know it. */
export interface MoreReading {
  readonly value: string | null;
  /** "±2"; `null` when it is not known. */
  readonly plusMinus: string | null;
  readonly unit: string;
  readonly aside: string | null;
}

type Extras = NonNullable<PhotoReport['extras']>;

/** Takes one extra out of the report, in mm where the scale is known, else in px of the photo. */
export function readExtra(extras: Extras, extra: ExtraMeasure, mmPerPx: number | null): MoreReading {
  switch (extra) {
    case 'bestAxis': {
      const { bestAxisTiltDeg: tilt, bestAxisSymmetry: symmetry } = extras;
      return {
        value: tilt === null ? null : Math.abs(tilt).toFixed(1),
        plusMinus: null,
        unit: '°',
        aside:
          tilt === null || symmetry === null
            ? null
            : `${sideWords(tilt)}symmetry about that line ${symmetry.toFixed(0)}`,
      };
    }
    case 'circularity':
      return { value: extras.circularityCrofton.toFixed(2), plusMinus: null, unit: '', aside: null };
    case 'areaRoundness':
      return { value: extras.areaRoundness.toFixed(2), plusMinus: null, unit: '', aside: null };
    case 'circumscribed':
      return radius(extras.circumscribedRadiusPx, extras.circumscribedRadiusMm);
    case 'inscribed':
      return radius(extras.inscribedRadiusPx, extras.inscribedRadiusMm);
    case 'deviations': {
      const { deviations } = extras;
      const words = (px: number) => (mmPerPx === null ? px.toFixed(1) : (px * mmPerPx).toFixed(1));
      return {
        value: deviations && words(deviations.peakToValleyPx),
        plusMinus: null,
        unit: mmPerPx === null ? 'px' : 'mm',
        aside:
          deviations &&
          `highest ${words(deviations.peakPx)}, deepest ${words(deviations.valleyPx)}, usual ${words(deviations.rootMeanSquarePx)}`,
      };
    }
  }
}

function sideWords(tiltDeg: number): string {
  if (Math.abs(tiltDeg) < 0.05) return 'upright, ';
  return tiltDeg > 0 ? 'to the right, ' : 'to the left, ';
}

function radius(px: number, mm: number | null): MoreReading {
  return mm === null
    ? { value: px.toFixed(0), plusMinus: null, unit: 'px', aside: null }
    : { value: mm.toFixed(0), plusMinus: null, unit: 'mm', aside: null };
}

export const EXTRA_NAMES: Record<ExtraMeasure, string> = {
  bestAxis: 'Tilt of the best axis',
  circularity: 'Circularity',
  areaRoundness: 'Area ÷ circumscribed circle',
  circumscribed: 'Circumscribed circle, radius',
  inscribed: 'Inscribed circle, radius',
  deviations: 'Out of round about the ball',
};

export const EXTRA_MEANINGS: Record<ExtraMeasure, Meaning> = {
  bestAxis: {
    says: 'How far the plant’s own best line of symmetry leans from the upright. A plant that is even in itself but leans shows it here.',
    measured:
      'Of all lines through the middle of the pot rim, the one about which the canopy above the rim matches its mirror image best (Dice).',
    best: '0° stands upright.',
    range: 'Degrees, −30 to 30; right or left. Not known without a pot.',
    bias: 'The symmetry about this line is never below the symmetry score; compare it with itself only. A lean past 30° reads 30.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'Largest overlap over all lines: de Valcourt (1966), Measures of axial symmetry for ovals.',
  },
  circularity: {
    says: 'Area against the length of the edge. Every bay and leaf tip takes it down.',
    measured:
      '4π × area ÷ perimeter², the perimeter by Crofton’s formula: how often straight lines in four directions cross the edge.',
    best: '1 is a disc.',
    range: 'No unit, above 0; a disc drawn in pixels reads 0.99 to 1.00, a square 0.79.',
    bias: 'It depends on how sharp the photo is, so no score rests on it. Two rules are in use; the other is the square root of this one. A perimeter counted in pixel steps would read 0.90 for a disc.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source:
      'Cox (1927), A method of assigning numerical and percentage values to the degree of roundness of sand grains. Perimeter: Crofton (1868), On the theory of local probability.',
  },
  areaRoundness: {
    says: 'How much of the smallest circle round the whole plant the canopy fills.',
    measured: 'Area of the canopy ÷ area of the smallest circle round all of it, long stems too.',
    best: '1 is a disc.',
    range: 'No unit, above 0 to 1; a square reads 0.64, half a disc 0.50.',
    bias: 'One long stem widens the circle and takes it down for the whole plant. A canopy cut off flat by its pot reads below 1 even when the rest is round.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source:
      'Square of the circularity of Wadell (1933), Sphericity and roundness of rock particles; both forms in ISO 9276-6:2008.',
  },
  circumscribed: {
    says: 'The smallest circle that holds the whole silhouette.',
    measured: 'Smallest circle round all of the canopy, long stems too (exact).',
    best: 'It is a size, not a score.',
    range: 'mm, or px of the photo without a scale.',
    bias: 'A single tip sets it.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'MCCI: ISO 12181-1:2011.',
  },
  inscribed: {
    says: 'The largest circle that fits inside the silhouette.',
    measured: 'Largest circle inside the canopy, its gaps filled.',
    best: 'It is a size, not a score.',
    range: 'mm, or px of the photo without a scale.',
    bias: 'A single deep bay sets it.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'MICI: ISO 12181-1:2011, here of the whole silhouette.',
  },
  deviations: {
    says: 'How far the smoothed outline departs from the ball itself, rather than from the tightest two circles.',
    measured:
      'Highest peak plus deepest valley about the least-squares circle of the smoothed outline; “usual” is the root mean square.',
    best: '0 is a perfect circle.',
    range: 'mm, or px of the photo without a scale; 0 and up.',
    bias: 'Never less than the out of round of the minimum zone.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'RONt, RONp, RONv and RONq: ISO 12181-1:2011.',
  },
};
