import { median } from 'simple-statistics';
import { RAYS, type RingRays, rayTurn } from './ring-rays.ts';

/** How one edge between dark and light lies about where it was looked for, ring units, outwards positive. */
export interface EdgeFit {
  /** Shift of the whole edge right and down (in the mark's own frame). */
  readonly shift: readonly [right: number, down: number];
  /** Growth in every direction. */
  readonly growth: number;
  /** Oblongness: growth along 0° and 45° with equal shrinking across. */
  readonly oblong: readonly [along: number, slanting: number];
  /** Standard deviation of single rays about the fit. */
  readonly stray: number;
  /** Share of the rays on which the edge was seen. */
  readonly seen: number;
  /** Difference of light across the edge ÷ sum of both sides. */
  readonly contrast: number;
}

/** Half the width of the strip in which an edge is looked for, ring units: up to the middle of the rings beside it. */
const HALF_STRIP = 0.5;

/**
 * Finds one circular edge on all rays and fits its shift, growth and oblongness.
 *
 * @param edgeUnits where the edge should be
 * @param darkInside whether the ring inside is the dark one
 * @returns `null` when fewer than half the rays show it
 *
 * Notes: on each ray the edge is where a sharp step would hold the same amount of light as is found between the middles
 * of the two rings, so blur moves it by nothing where the rings are of one width, and noise by little.
 */
export function fitEdge(rays: RingRays, edgeUnits: number, darkInside: boolean): EdgeFit | null {
  const inner = plateau(rays, edgeUnits - HALF_STRIP);
  const outer = plateau(rays, edgeUnits + HALF_STRIP);
  const steps = inner.map((light, ray) => ((outer[ray] as number) - light) * (darkInside ? 1 : -1));
  const usual = median(steps);
  if (!(usual > 0)) return null;
  const contrast = usual / (median(inner) + median(outer));

  const places: EdgePlace[] = [];
  for (let ray = 0; ray < RAYS; ray++) {
    const step = steps[ray] as number;
    if (!(step > 0.4 * usual && step < 2.5 * usual)) continue;
    const place = stepPlace(rays, ray, edgeUnits, inner[ray] as number, outer[ray] as number);
    if (Math.abs(place) < HALF_STRIP) places.push({ turn: rayTurn(ray), place });
  }
  return fitPlaces(places, contrast);
}

interface EdgePlace {
  readonly turn: number;
  readonly place: number;
}

/** Light at one distance from the middle on each ray: a fifth of a unit long, three rays wide. */
function plateau({ perUnit, samplesOfRay, light }: RingRays, units: number): number[] {
  const from = Math.max(0, Math.round((units - 0.1) * perUnit));
  const to = Math.min(samplesOfRay, Math.max(from + 1, Math.round((units + 0.1) * perUnit)));
  const single = Array.from({ length: RAYS }, (_, ray) => {
    let sum = 0;
    for (let s = from; s < to; s++) sum += light[ray * samplesOfRay + s] as number;
    return sum / (to - from);
  });
  return single.map((at, ray) => {
    const [before, after] = [single.at(ray - 1) as number, single[(ray + 1) % RAYS] as number];
    return (before + at + after) / 3;
  });
}

function stepPlace(
  { perUnit, samplesOfRay, light }: RingRays,
  ray: number,
  edge: number,
  inner: number,
  outer: number,
): number {
  // The strip's ends fall between samples: those at the ends count by the part that lies inside.
  const [from, to] = [(edge - HALF_STRIP) * perUnit, (edge + HALF_STRIP) * perUnit];
  let risen = 0;
  for (let s = Math.max(0, Math.floor(from)); s < Math.min(samplesOfRay, Math.ceil(to)); s++) {
    const part = Math.min(s + 1, to) - Math.max(s, from);
    risen += (part * ((light[ray * samplesOfRay + s] as number) - inner)) / (outer - inner);
  }
  return HALF_STRIP - risen / perUnit;
}

/** Fits a circle's first two waves to the places; what strays by more than three times the usual is left out once. */
function fitPlaces(places: readonly EdgePlace[], contrast: number): EdgeFit | null {
  if (places.length < RAYS / 2) return null;
  let kept = places;
  let waves = fitWaves(kept);
  for (let round = 0; round < 2; round++) {
    const usual = 1.4826 * median(kept.map((place) => Math.abs(strayOf(place, waves))));
    kept = places.filter((place) => Math.abs(strayOf(place, waves)) <= Math.max(3 * usual, 0.01));
    if (kept.length < RAYS / 2) return null;
    waves = fitWaves(kept);
  }
  const squares = kept.reduce((sum, place) => sum + strayOf(place, waves) ** 2, 0);
  const [growth = 0, right = 0, down = 0, along = 0, slanting = 0] = waves;
  return {
    shift: [right, down],
    growth,
    oblong: [along, slanting],
    stray: Math.sqrt(squares / Math.max(1, kept.length - 5)),
    seen: kept.length / RAYS,
    contrast,
  };
}

/**
 * Constant, first and second wave by repeated projection: the rays lie nearly evenly, so the waves are nearly
 * independent and a few rounds settle what missing rays mix.
 */
function fitWaves(places: readonly EdgePlace[]): number[] {
  const waves = [0, 0, 0, 0, 0];
  for (let round = 0; round < 12; round++) {
    const rest = places.map((place) => strayOf(place, waves));
    let largest = 0;
    for (let k = 0; k < waves.length; k++) {
      let [product, square] = [0, 0];
      places.forEach(({ turn }, at) => {
        const wave = waveAt(k, turn);
        product += wave * (rest[at] as number);
        square += wave * wave;
      });
      const change = product / square;
      waves[k] = (waves[k] as number) + change;
      largest = Math.max(largest, Math.abs(change));
      places.forEach(({ turn }, at) => {
        rest[at] = (rest[at] as number) - change * waveAt(k, turn);
      });
    }
    if (largest < 1e-6) break;
  }
  return waves;
}

function strayOf({ turn, place }: EdgePlace, waves: readonly number[]): number {
  let rest = place;
  for (let k = 0; k < waves.length; k++) rest -= (waves[k] as number) * waveAt(k, turn);
  return rest;
}

function waveAt(k: number, turn: number): number {
  if (k === 0) return 1;
  const order = k < 3 ? 1 : 2;
  return k % 2 === 1 ? Math.cos(order * turn) : Math.sin(order * turn);
}
