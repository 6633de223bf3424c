import { converter, differenceCiede2000 } from 'culori';

/** One colour in CIE L*a*b* under D65. */
export interface LabColour {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

const ciede2000 = differenceCiede2000();
const toLab = converter('lab65');

/**
 * How different two colours look: CIEDE2000 with all weights 1. About 1 is just seen, 10 is plain.
 *
 * Reference: Sharma, Wu, Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test data,
 * and mathematical observations (2005); CIE 142-2001. By culori.
 *
 * Example: L*a*b* 50, 2.5, 0 and 73, 25, -18 are 27.1492 apart.
 */
export function colourDifference(one: LabColour, other: LabColour): number {
  return ciede2000({ mode: 'lab65', ...one }, { mode: 'lab65', ...other });
}

/**
 * An sRGB colour in CIE L*a*b* under D65, exact. For a whole picture `labOfRaster` does the same, faster.
 *
 * @param rgb red, green and blue, 0–255
 *
 * Reference: IEC 61966-2-1; CIE 15:2018 §8.2.1. By culori's `lab65`: its plain `lab` is D50.
 */
export function labOfSrgb([r, g, b]: readonly [number, number, number]): LabColour {
  const lab = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
  return { l: lab.l, a: lab.a, b: lab.b };
}
