import { PARTS, type PartMap } from '../canopy/found-plant.ts';
import { type Gains, LINEAR_OF_BYTE } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';
import { moved, type Similarity } from '../stand/frame/similarity.ts';
import { type ColourBalance, tintOfLogGain } from './colour-balance.ts';

/** Bytes between which a channel is neither lost in noise nor cut off. */
const DARKEST = 8;
const LIGHTEST = 247;
/** Places looked at, and of how many the light can be told. */
const PLACES = 40_000;
const LEAST_PLACES = 400;
/** Squares along the longer side, each of which has a say on how unlike the light is from place to place. */
const SQUARES = 8;
const LEAST_IN_SQUARE = 20;
/** Least doubt, log units: a camera's tone curve bends red, green and blue alike only in grey. */
const FLOOR = { exposure: 0.05, tint: 0.012 };
/** Share by which a change of exposure is doubted: the curve gives back dark and light cloth unalike. */
const CURVE_SHARE = { exposure: 0.12, tint: 0.03 };

const BACKGROUND = PARTS.indexOf('background');

/**
 * Brings a photo to the light of its stand's reference picture, by what stands still in both.
 *
 * At each place that is neither plant nor pot here the reference's light is divided by the photo's, in linear light,
 * channel by channel; the gain is the middle of the densest 40 % of them. A plant in the reference, a shadow and a thing
 * put down are few and unlike, so they have no say.
 *
 * @param move photo px to reference px
 * @param parts what each pixel of the photo is, of the photo's size
 * @returns `null` when too little of the stand is seen in both, or is too dark or burnt out to tell
 *
 * Notes: one light for the whole photo. Doubt is half the spread between squares of the picture (robust), a floor, and a
 * share of the change, because a camera's tone curve is not known.
 */
export function balanceByBackdrop(
  photo: Raster,
  reference: Raster,
  move: Similarity,
  parts: PartMap,
): ColourBalance | null {
  const places = seenInBoth(photo, reference, move, parts);
  if (places.length < LEAST_PLACES) return null;
  const middle = gainsOf(places);
  const local = bySquare(places)
    .filter((one) => one.length >= LEAST_IN_SQUARE)
    .map(gainsOf);
  const [red, green, blue] = middle;
  const spread = (gainOf: (gains: Gains) => number) =>
    robustSpread(local.map((gains) => Math.log(gainOf(gains) / gainOf(middle))));
  const tints = [spread(([r, g]) => r / g), spread(([, g, b]) => b / g)];
  const change = Math.abs(Math.log(green));
  const cast = Math.max(Math.abs(Math.log(red / green)), Math.abs(Math.log(blue / green)));
  return {
    from: 'backdrop',
    gains: middle,
    doubt: {
      stops: Math.hypot(FLOOR.exposure, spread(([, g]) => g) / 2, CURVE_SHARE.exposure * change) / Math.LN2,
      tint: tintOfLogGain(
        Math.hypot(FLOOR.tint, Math.max(...tints) / 2, CURVE_SHARE.tint * Math.hypot(change, cast)),
      ),
    },
  };
}

interface SeenPlace {
  readonly square: number;
  /** Logarithm of reference light ÷ photo light. */
  readonly logs: readonly [number, number, number];
}

function seenInBoth(photo: Raster, reference: Raster, move: Similarity, parts: PartMap): SeenPlace[] {
  const { width, height } = photo;
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / PLACES)));
  const side = Math.max(width, height) / SQUARES;
  const places: SeenPlace[] = [];
  for (let y = step >> 1; y < height; y += step) {
    for (let x = step >> 1; x < width; x += step) {
      const here = y * width + x;
      if (parts.data[here] !== BACKGROUND) continue;
      const there = moved(move, [x + 0.5, y + 0.5]);
      const thereX = Math.floor(there[0]);
      const thereY = Math.floor(there[1]);
      if (thereX < 0 || thereY < 0 || thereX >= reference.width || thereY >= reference.height) continue;
      const logs = logRatios(photo, here, reference, thereY * reference.width + thereX);
      if (logs !== null) places.push({ square: Math.floor(y / side) * SQUARES + Math.floor(x / side), logs });
    }
  }
  return places;
}

function logRatios(photo: Raster, here: number, reference: Raster, there: number): SeenPlace['logs'] | null {
  const red = logRatio(photo.data[3 * here] as number, reference.data[3 * there] as number);
  const green = logRatio(photo.data[3 * here + 1] as number, reference.data[3 * there + 1] as number);
  const blue = logRatio(photo.data[3 * here + 2] as number, reference.data[3 * there + 2] as number);
  return red === null || green === null || blue === null ? null : [red, green, blue];
}

function logRatio(now: number, then: number): number | null {
  if (now < DARKEST || then < DARKEST || now > LIGHTEST || then > LIGHTEST) return null;
  return Math.log((LINEAR_OF_BYTE[then] as number) / (LINEAR_OF_BYTE[now] as number));
}

function bySquare(places: readonly SeenPlace[]): SeenPlace[][] {
  const squares = new Map<number, SeenPlace[]>();
  for (const place of places) {
    const others = squares.get(place.square);
    if (others === undefined) squares.set(place.square, [place]);
    else others.push(place);
  }
  return [...squares.values()];
}

function gainsOf(places: readonly SeenPlace[]): Gains {
  const gain = (channel: 0 | 1 | 2) => {
    const logs = new Float64Array(places.length);
    for (let k = 0; k < logs.length; k++) logs[k] = (places[k] as SeenPlace).logs[channel];
    return Math.exp(densest(logs.sort()));
  };
  return [gain(0), gain(1), gain(2)];
}

/** Middle of the shortest interval that holds 40 % of the values: the first step of the half-sample mode. */
function densest(sorted: Float64Array): number {
  const held = Math.floor(sorted.length * 0.4);
  let best = 0;
  for (let k = 0; k + held < sorted.length; k++) {
    const wide = (sorted[k + held] as number) - (sorted[k] as number);
    if (wide < (sorted[best + held] as number) - (sorted[best] as number)) best = k;
  }
  return sorted[best + (held >> 1)] as number;
}

/** Standard deviation by the median of distances from 0, as of a normal distribution; 0 for one value or none. */
function robustSpread(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const sorted = values.map(Math.abs).sort((one, other) => one - other);
  return 1.4826 * (sorted[sorted.length >> 1] as number);
}
