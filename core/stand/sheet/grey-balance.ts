import { median } from 'simple-statistics';
import type { Raster } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import { LINEAR_OF_STEP } from './light-plane.ts';
import { mapPoint } from './paper-map.ts';
import type { GreyPatch } from './sheet-geometry.ts';
import type { GreyReading } from './sheet-reading.ts';

/** Display steps: above, a channel may have been cut off; below, noise and lens haze say more than the patch. */
const TOO_BRIGHT_STEP = 250;
const TOO_DARK_STEP = 12;

/** Share of a patch that is looked at, about its middle: its rim is mixed with paper by blur. */
const INNER_SHARE = 0.6;
const SAMPLES = 9;

/** A patch whose light varies by more than this is covered in part; gains this far off the middle one are not grey. */
const MOST_UNEVEN = 0.2;
const MOST_APART = 0.15;

/** Each patch gives back at most this share of the light of the one before; as printed it is about one half. */
const LEAST_DARKER = 0.8;

interface SeenPatch {
  /** Middle display step of red, green and blue. */
  readonly steps: readonly number[];
  /** Middle light of the green channel, linear. */
  readonly light: number;
  /** How far a quarter of the samples stray, as a share of the light. */
  readonly uneven: number;
}

/**
 * Reads the light's colour off the grey patches.
 *
 * @returns gains for linear light and how they were come by
 *
 * Notes: only the patches' being grey is used, not how grey they are: that depends on the printer and its ink. Patches
 * that are covered, too bright or too dark are left out; two good ones are needed.
 */
export function readGreys(
  raster: Raster,
  patches: readonly GreyPatch[],
  paperToPhoto: Homography,
): GreyReading {
  const seen = patches
    .map((patch) => seePatch(raster, patch, paperToPhoto))
    .filter((patch): patch is SeenPatch => patch !== null && patch.uneven <= MOST_UNEVEN);
  const unclipped = seen.filter(({ steps }) => Math.max(...steps) < TOO_BRIGHT_STEP);
  const usable = unclipped.filter(({ steps }) => Math.min(...steps) > TOO_DARK_STEP);
  const alike = alikeGains(darkening(usable).map(({ steps }) => gainsOf(steps)));
  if (alike.length >= 2) return { state: 'ok', gains: middleGains(alike), spread: spreadOf(alike) };
  return { state: whyNot(seen.length, unclipped.length, usable.length), gains: null, spread: null };
}

function whyNot(seen: number, unclipped: number, usable: number): GreyReading['state'] {
  if (seen < 2 || usable >= 2) return 'not-seen';
  return seen - unclipped > unclipped - usable ? 'too-bright' : 'too-dark';
}

function seePatch({ width, height, data }: Raster, patch: GreyPatch, map: Homography): SeenPatch | null {
  const channels: number[][] = [[], [], []];
  for (let k = 0; k < SAMPLES * SAMPLES; k++) {
    const right = 0.5 + INNER_SHARE * (((k % SAMPLES) + 0.5) / SAMPLES - 0.5);
    const down = 0.5 + INNER_SHARE * ((Math.floor(k / SAMPLES) + 0.5) / SAMPLES - 0.5);
    const place = mapPoint(map, [patch.leftMm + right * patch.widthMm, patch.topMm + down * patch.heightMm]);
    const [column, row] = [Math.floor(place[0]), Math.floor(place[1])];
    if (!(column >= 0 && row >= 0 && column < width && row < height)) return null;
    channels.forEach((values, c) => {
      values.push(data[3 * (row * width + column) + c] as number);
    });
  }
  const light = channels.map((values) => values.map((step) => LINEAR_OF_STEP[step] as number));
  const strays = light.map((values) => {
    const middle = median(values);
    return median(values.map((value) => Math.abs(value - middle))) / Math.max(middle, 1e-3);
  });
  return {
    steps: channels.map((values) => median(values)),
    light: median(light[1] as number[]),
    uneven: 2 * Math.max(...strays),
  };
}

/** The longest row of patches each clearly darker than the one before it, as printed: a leaf over several is not. */
function darkening(patches: readonly SeenPatch[]): readonly SeenPatch[] {
  let best: readonly SeenPatch[] = [];
  for (let choice = 0; choice < 1 << patches.length; choice++) {
    const row = patches.filter((_, k) => (choice >> k) & 1);
    const darkens = row.every(
      (patch, k) => k === 0 || patch.light <= LEAST_DARKER * (row[k - 1] as SeenPatch).light,
    );
    if (darkens && row.length > best.length) best = row;
  }
  return best;
}

type Gains = readonly [red: number, green: number, blue: number];

function gainsOf(steps: readonly number[]): Gains {
  const [red = 0, green = 0, blue = 0] = steps.map((step) => LINEAR_OF_STEP[Math.round(step)] as number);
  return [green / red, 1, green / blue];
}

/** A leaf over a patch is even too, but no grey: it disagrees with the others. */
function alikeGains(gains: readonly Gains[]): Gains[] {
  if (gains.length === 0) return [];
  const middle = middleGains(gains);
  return gains.filter((one) =>
    one.every((gain, c) => Math.abs(gain / (middle[c] as number) - 1) <= MOST_APART),
  );
}

function middleGains(gains: readonly Gains[]): Gains {
  return [median(gains.map(([red]) => red)), 1, median(gains.map(([, , blue]) => blue))];
}

function spreadOf(gains: readonly Gains[]): number {
  const apart = [0, 2].map((c) => {
    const values = gains.map((one) => one[c] as number);
    return Math.max(...values) / Math.min(...values) - 1;
  });
  return Math.max(...apart);
}
