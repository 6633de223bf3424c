import type { LabPicture } from '../raster/lab.ts';
import { colourCell } from './colour-table.ts';

/**
 * One light against another. L*a*b* is made of cube roots of light, so a gain in exposure stretches all three about
 * black, and a change of white balance shifts a* and b* in proportion to lightness.
 */
export interface Light {
  /** Exposure, in stops. */
  readonly stops: number;
  /** Shift of a* and of b* at white. */
  readonly tintA: number;
  readonly tintB: number;
}

export const SAME_LIGHT: Light = { stops: 0, tintA: 0, tintB: 0 };

/** How far a week's light may be off and how closely it is found. */
const SEARCH = {
  mostStops: 2,
  stopsStep: 0.25,
  mostTint: 18,
  tintStep: 4,
  /** Times the steps are halved. */
  halvings: 3,
  /** Pixels looked at. */
  pixels: 4000,
  /** Spread of light from week to week that is usual, and what leaving it costs in overlap. */
  usualStops: 1,
  usualTint: 8,
  belief: 0.03,
};

/** The picture as it would look in the other light. */
export function inLight(picture: LabPicture, light: Light): LabPicture {
  const { width, height, l, a, b } = picture;
  const change = changeOf(light);
  return {
    width,
    height,
    l: l.map((value) => change.l(value)),
    a: a.map((value, i) => change.a(value, l[i] as number)),
    b: b.map((value, i) => change.b(value, l[i] as number)),
  };
}

function changeOf({ stops, tintA, tintB }: Light) {
  const gain = 2 ** (stops / 3);
  return {
    l: (l: number) => gain * (l + 16) - 16,
    a: (a: number, l: number) => gain * (a + (tintA * (l + 16)) / 116),
    b: (b: number, l: number) => gain * (b + (tintB * (l + 16)) / 116),
  };
}

/**
 * The light that makes a picture's colours most like those met before: greatest overlap of the two histograms (the sum
 * of the roots of both shares), with a belief that light changes little.
 *
 * Plant and place both help to tell, and no plant need be known. A colour that is new has no say, so a plant that
 * flowers or a thing put down beside it does not mislead.
 *
 * @param picture the photo, of any size; a few thousand of its pixels are looked at
 * @param density share of the pixels met before in each cell of the colour table, smoothed
 * @returns what brings the photo to the light of before, within ±2 stops and ±18 of a* and b* at white
 *
 * Notes: one light for the whole photo; good to about a fifth of a stop.
 * Reference: Bhattacharyya, On a measure of divergence between two statistical populations (1943), given from memory.
 */
export function matchLight(picture: LabPicture, density: Float32Array): Light {
  const every = Math.max(1, Math.floor(picture.l.length / SEARCH.pixels));
  const roots = density.map(Math.sqrt);
  const counts = new Uint16Array(density.length);
  const score = (light: Light): number => {
    const change = changeOf(light);
    counts.fill(0);
    let sum = 0;
    for (let i = every >> 1; i < picture.l.length; i += every) {
      const l = picture.l[i] as number;
      const a = change.a(picture.a[i] as number, l);
      const cell = colourCell(change.l(l), a, change.b(picture.b[i] as number, l));
      counts[cell] = (counts[cell] as number) + 1;
      sum++;
    }
    let alike = 0;
    for (let cell = 0; cell < counts.length; cell++) {
      const count = counts[cell] as number;
      if (count > 0) alike += Math.sqrt(count / sum) * (roots[cell] as number);
    }
    const unusual =
      (light.stops / SEARCH.usualStops) ** 2 +
      (light.tintA / SEARCH.usualTint) ** 2 +
      (light.tintB / SEARCH.usualTint) ** 2;
    return alike - SEARCH.belief * unusual;
  };
  return climb(bestExposure(score), score);
}

function bestExposure(score: (light: Light) => number): Light {
  let best = SAME_LIGHT;
  let highest = score(best);
  for (let stops = -SEARCH.mostStops; stops <= SEARCH.mostStops; stops += SEARCH.stopsStep) {
    const light = { ...SAME_LIGHT, stops };
    const here = score(light);
    if (here > highest) [best, highest] = [light, here];
  }
  return best;
}

/** Steps along each of the three as long as it gets better, then with smaller steps (Hooke, Jeeves 1961). */
function climb(from: Light, score: (light: Light) => number): Light {
  let best = from;
  let highest = score(best);
  for (let halving = 0; halving <= SEARCH.halvings; halving++) {
    const [stops, tint] = [SEARCH.stopsStep / 2 ** halving, SEARCH.tintStep / 2 ** halving];
    const steps: Light[] = [stops, -stops].map((step) => ({ ...SAME_LIGHT, stops: step }));
    steps.push(
      ...[tint, -tint].flatMap((step) => [
        { ...SAME_LIGHT, tintA: step },
        { ...SAME_LIGHT, tintB: step },
      ]),
    );
    for (let moved = true; moved; ) {
      moved = false;
      for (const step of steps) {
        const light = added(best, step);
        const here = score(light);
        if (here > highest && isPossible(light)) [best, highest, moved] = [light, here, true];
      }
    }
  }
  return best;
}

function added(one: Light, other: Light): Light {
  return { stops: one.stops + other.stops, tintA: one.tintA + other.tintA, tintB: one.tintB + other.tintB };
}

function isPossible({ stops, tintA, tintB }: Light): boolean {
  return (
    Math.abs(stops) <= SEARCH.mostStops &&
    Math.abs(tintA) <= SEARCH.mostTint &&
    Math.abs(tintB) <= SEARCH.mostTint
  );
}
