import type { PhotoReport } from '../../../core/report.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import { clockWords } from '../words/plant-words.ts';
import type { NumberedStem } from './cut-marks.ts';

/** What a thing drawn on the photo says when it is tapped. */
export function ballWords({ ball }: PhotoReport): string {
  const across = ball?.radiusMm ? ` It is ${(ball.radiusMm * 2).toFixed(0)} mm across.` : '';
  return `The ball: the circle this canopy should fill.${across}`;
}

export const OUTLINE_WORDS =
  'The outline: the edge of leaf, flower and stem as found in the photo. If it runs wrong, mend it.';

/** What an outlined part of the photo says when it is tapped. */
export const PART_WORDS: Record<keyof View['drawing']['parts'], string> = {
  flower: 'Flower. It belongs to the canopy; its share is the bloom.',
  pot: 'The pot. It is never counted as canopy.',
  soil: 'Soil or compost. It is never counted as canopy.',
  support: 'A label or support. It is never counted as canopy.',
};

export function axisWords({ scale }: PhotoReport): string {
  const length = scale
    ? ` One millimetre is ${(1 / scale.mmPerPx).toFixed(1)} px here, by the rim.`
    : ' Without the rim’s measure there are no millimetres.';
  return `The axis: the upright line through the middle of the pot rim.${length}`;
}

export function weakWords({ lopsidedness }: PhotoReport, side: 'left' | 'right'): string {
  if (!lopsidedness) return '';
  const size = numberWords(Math.abs(lopsidedness.percent), 'lopsidedness');
  const other = side === 'left' ? 'right' : 'left';
  return `The weak side is the ${side}. The canopy hangs ${size} % ${plusMinusWords(lopsidedness.plusMinus)} of the ball’s radius to the ${other}. Hatched: where the ball is not filled there.`;
}

export function cutWords({ number, stem }: NumberedStem): string {
  const amount = excessWords(stem);
  const thing = stem.kind === 'shoot' ? 'a long stem' : 'a broad shoulder';
  return `Cut mark ${number}: at ${clockWords(stem.clock)} ${thing} stands ${amount} outside the ball. Look for a leaf joint at the mark. A cut cannot be undone.`;
}

export function excessWords(stem: NumberedStem['stem']): string {
  return stem.excessMm === null ? `${stem.excessPx.toFixed(0)} px` : `${stem.excessMm.toFixed(0)} mm`;
}
