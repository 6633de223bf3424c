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
 * @param views with the pot's place; those without are passed over
 * @returns one entry a view that stands aside; `[]` when all stand together or fewer than two have a place; `null` when fewer
 * than half stand together: then it is the camera that moved, and nothing can be told
 *
 * Notes: the plant is measured about its own rim, so this does no harm beyond a little perspective. A move towards or away from the camera shows on the rim's
 * height only, by too little to be told.
 */
export function potDrifts(views: readonly (TurnedView | null)[]): PotDrift[] | null {
  const places = views.flatMap((one, view) => (one?.potPlace ? [{ view, ...one.potPlace }] : []));
  if (places.length < 2) return [];
  // One scale for all: the same px must not read as another place because a rim was read a little wider.
  const mmPerPx = median(places.map((place) => place.mmPerPx));
  const rightMm = places.map((place) => place.xPx * mmPerPx);
  const company = rightMm.map((one) => rightMm.filter((other) => Math.abs(other - one) <= MOVED_MM).length);
  const most = Math.max(...company);
  if (2 * most < places.length) return null;
  const usual = company.indexOf(most);
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
