import type { Stand, StandForm } from '../../../server/schemas/stand.ts';
import { lengthWords } from '../stand/length-entry.ts';

export type LightSide = NonNullable<StandForm['lightSide']>;

/** In the order in which they are offered, as seen from the camera. */
export const LIGHT_SIDES = [
  'left',
  'right',
  'behind-plant',
  'behind-camera',
  'above',
] as const satisfies readonly LightSide[];

export const LIGHT_WORDS: Record<LightSide, string> = {
  left: 'from the left',
  right: 'from the right',
  'behind-plant': 'from behind the plant',
  'behind-camera': 'from behind the camera',
  above: 'from above',
};

export const SCALE_WORDS: Record<Stand['scaleFrom'], string> = {
  sheet: 'the stand sheet',
  rim: 'the pot rim',
  none: 'nothing yet',
};

/** "A4 on the backdrop, the pot 15 cm in front of it". */
export function sheetWords(sheet: NonNullable<Stand['sheet']>): string {
  if (sheet.place === 'bench') {
    return `${sheet.paper}, flat on the bench${sheet.plantInFrontMm > 0 ? `, the pot ${lengthWords(sheet.plantInFrontMm)} before it` : ''}`;
  }
  return `${sheet.paper} on the backdrop, the pot ${lengthWords(sheet.plantInFrontMm)} in front of it`;
}
