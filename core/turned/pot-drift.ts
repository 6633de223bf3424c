import type { TurnedView } from './turned-view.ts';

/** A view whose pot stands aside of where it stands in most others, told by its rim. */
export interface PotDrift {
  /** Its place in the list, from 0. */
  readonly view: number;
  /** Further right on the picture, mm. */
  readonly asideMm: number;
}

/** A rim is read to about 2 mm; three times that is no misreading. */
const MOVED_MM = 6;

/**
 * Finds pots that were set down in another place, from where their rims stand on the pictures of one fixed camera.
 *
 * @param views with scale; those without are passed over
 * @returns one entry a view that stands aside; `[]` when all stand together or fewer than two have a scale
 *
 * Notes: the plant is measured about its own rim, so this does no harm beyond a little perspective. A move towards or away from the camera shows on the rim's
 * height only, by too little to be told.
 */
export function potDrifts(views: readonly TurnedView[]): PotDrift[] {
  const places = views.flatMap(({ mmPerPx, axisXPx }, view) =>
    mmPerPx === null ? [] : [{ view, mmPerPx, axisXPx }],
  );
  if (places.length < 2) return [];
  // One scale for all: the same px must not read as another place because a rim was read a little wider.
  const mmPerPx = median(places.map((place) => place.mmPerPx));
  const rightMm = places.map((place) => place.axisXPx * mmPerPx);
  const company = rightMm.map((one) => rightMm.filter((other) => Math.abs(other - one) <= MOVED_MM).length);
  const usual = company.indexOf(Math.max(...company));
  const together = rightMm.filter((one) => Math.abs(one - (rightMm[usual] as number)) <= MOVED_MM);
  const middle = together.reduce((sum, one) => sum + one, 0) / together.length;
  return places
    .map(({ view }, k) => ({ view, asideMm: (rightMm[k] as number) - middle }))
    .filter(({ asideMm }) => Math.abs(asideMm) > MOVED_MM);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}
