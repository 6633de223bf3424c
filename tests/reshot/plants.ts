import type { ViewOptions } from '../../sample-images/render/render-view.ts';
import { type Draft, sittingView } from '../../sample-images/render/season/sitting-view.ts';
import { PLAIN_PLACES, type RenderPlace } from '../score/renders/places.ts';
import { type Bloom, flowerOf } from '../score/renders/plan.ts';

/** One plant that is photographed again and again, unchanged. */
export interface ReshotPlant {
  readonly name: string;
  readonly rimMm: number;
  /** As it stands on the day, before any disturbance. */
  readonly view: ViewOptions;
}

interface Kind {
  readonly name: string;
  readonly place: string;
  readonly bloom: Bloom;
  readonly week?: number;
  readonly turnDeg?: number;
}

/** The plain stands of the scoring renders, each a plant of another kind. */
const KINDS: readonly Kind[] = [
  { name: 'lopsided, grey cloth', place: 'grey-cloth', bloom: 'none' },
  { name: 'long stems, black cloth', place: 'black-cloth', bloom: 'none', week: 6, turnDeg: 28 },
  { name: 'bare, pale sheet', place: 'pale-sweep-bare', bloom: 'none' },
  { name: 'leafy, pale sheet', place: 'pale-sweep-full', bloom: 'none' },
  { name: 'round, blue sheet', place: 'blue-sheet', bloom: 'none' },
  { name: 'small, white studio', place: 'white-studio', bloom: 'none' },
  { name: 'large, cream wall', place: 'cream-wall', bloom: 'none' },
  { name: 'small leaves, low camera', place: 'mid-grey-low-camera', bloom: 'none' },
  { name: 'white bloom, blue sheet', place: 'blue-sheet', bloom: 'white' },
  { name: 'pink bloom, cream wall', place: 'cream-wall', bloom: 'pink', week: 9 },
];

/**
 * The plants to be photographed again.
 *
 * @param draft size and fineness of the photos
 * @param series 0, or another number for other plants of the same kinds
 * @param count the first so many
 */
export function reshotPlants(draft: Draft, series: number, count: number = KINDS.length): ReshotPlant[] {
  return KINDS.slice(0, count).map(({ name, place, bloom, week, turnDeg }) => {
    const { season, ...usual } = placeNamed(place);
    const { plant, pot, stand } = season;
    const flower = bloom === 'none' ? null : flowerOf(bloom);
    const seeded = { ...season, plant: { ...plant, seed: plant.seed + 1000 * (series + 1), flower } };
    const turn = (turnDeg ?? usual.turnDeg) + 180 * series;
    const view = sittingView({ ...seeded, stand }, week ?? usual.week, turn, draft, null);
    return { name, rimMm: pot.rimMm, view };
  });
}

function placeNamed(name: string): RenderPlace {
  const place = PLAIN_PLACES.find((one) => one.name === name);
  if (place === undefined) throw new RangeError(`Expected the name of a plain place but received ${name}`);
  return place;
}
