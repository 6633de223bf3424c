import type { FlowerLook } from '../../../sample-images/render/plant/plant-spec.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { sittingView } from '../../../sample-images/render/season/sitting-view.ts';
import { BUSY_PLACES, PLAIN_PLACES, type RenderPlace } from './places.ts';

export const BLOOMS = ['none', 'white', 'pink'] as const;
export type Bloom = (typeof BLOOMS)[number];

/** Exposures beside the usual one, as factors of the light. */
export const EXPOSURES = [0.4, 2] as const;

/** One photo to be rendered, and what it is a photo of. */
export interface PlannedRender {
  readonly name: string;
  /** The place's name: photos of one place show one plant from one camera place. */
  readonly place: string;
  readonly busy: boolean;
  readonly bloom: Bloom;
  /** What the camera exposed by, as a factor of its usual exposure. */
  readonly exposure: number;
  readonly view: ViewOptions;
  /** The place with nothing in it, photographed on another day: other shake, other light. `null` when not taken. */
  readonly emptyView: ViewOptions | null;
}

/** Photos of 800 px on their longer side. */
const DRAFT = { size: 0.5, samplesPerSide: 3 };

/** Linear reflectances. */
const PETALS: Record<Exclude<Bloom, 'none'>, Pick<FlowerLook, 'colour' | 'blotch'>> = {
  white: { colour: [0.76, 0.75, 0.7], blotch: [0.6, 0.42, 0.5] },
  pink: { colour: [0.66, 0.27, 0.38], blotch: [0.35, 0.03, 0.1] },
};

/** All renders that scoring looks at: every place with every bloom, and plain places out of bloom at other exposures. */
export function plannedRenders(scenery: (place: RenderPlace) => ViewOptions['scenery']): PlannedRender[] {
  const ofPlace = (place: RenderPlace, busy: boolean): PlannedRender[] =>
    BLOOMS.filter((bloom) => bloom === 'none' || !place.bare).map((bloom) =>
      planned(place, busy, bloom, 1, busy ? scenery(place) : null),
    );
  const exposed = PLAIN_PLACES.filter((_, k) => k % 2 === 0).flatMap((place) =>
    EXPOSURES.map((exposure) => planned(place, false, 'none', exposure, null)),
  );
  return [
    ...PLAIN_PLACES.flatMap((place) => ofPlace(place, false)),
    ...exposed,
    ...BUSY_PLACES.flatMap((place) => ofPlace(place, true)),
  ];
}

function planned(
  place: RenderPlace,
  busy: boolean,
  bloom: Bloom,
  exposure: number,
  scenery: ViewOptions['scenery'],
): PlannedRender {
  const plant = { ...place.season.plant, flower: bloom === 'none' ? null : flowerOf(bloom) };
  const season = { ...place.season, plant };
  const view = sittingView(season, place.week, place.turnDeg, DRAFT, scenery);
  const exposureStops = view.finish.exposureStops + Math.log2(exposure);
  const words = [place.name, bloom, ...(exposure === 1 ? [] : [`exposed-${exposure}`])];
  return {
    name: words.join('-'),
    place: place.name,
    busy,
    bloom,
    exposure,
    view: { ...view, finish: { ...view.finish, exposureStops } },
    emptyView: busy ? sittingView(place.season, place.week + 1, place.turnDeg, DRAFT, scenery) : null,
  };
}

/** The flowers that a bloom puts on a plant. */
export function flowerOf(bloom: Exclude<Bloom, 'none'>): FlowerLook {
  return {
    petalMm: 17,
    floretsPerTruss: 11,
    ruffle: 0.05,
    pedicel: 0.7,
    ...PETALS[bloom],
    share: 0.5,
    stage: [[0, 2]],
  };
}
