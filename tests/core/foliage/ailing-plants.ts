import type { LeafLook } from '../../../sample-images/render/plant/plant-spec.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { sittingView } from '../../../sample-images/render/season/sitting-view.ts';
import { PLAIN_PLACES } from '../../score/renders/places.ts';

/** One photo of a plant some of whose leaves may be ailing. */
export interface AilingShot {
  readonly light: LightName;
  readonly exposure: number;
  readonly view: ViewOptions;
}

/** A plant at a stand whose empty photo was taken in the usual light. */
export interface AilingPlant {
  readonly name: string;
  readonly isGolden: boolean;
  readonly emptyView: ViewOptions;
  /** First sittings in good health. */
  readonly healthy: readonly AilingShot[];
  readonly later: readonly AilingShot[];
}

/** Colour of the light against the stand's own; the camera makes up for part of it. */
export const LIGHTS = { day: [1, 1, 1], lamp: [1.22, 1, 0.66], shade: [0.86, 1, 1.24] } as const;
export type LightName = keyof typeof LIGHTS;
const CAMERA_MAKES_UP = 0.6;
export const EXPOSURES = [0.5, 0.7, 1, 1.4, 2] as const;

/** Yellow share of the leaves and share of brown margins in the later photos of a plant; plants alternate. */
const LATER = [
  [
    { yellow: 0, brown: 0.25 },
    { yellow: 0.1, brown: 0.15 },
    { yellow: 0.36, brown: 0 },
  ],
  [
    { yellow: 0, brown: 0 },
    { yellow: 0.05, brown: 0 },
    { yellow: 0.22, brown: 0.2 },
  ],
] as const;

const GOLDEN: Pick<LeafLook, 'colour' | 'youngColour'> = {
  colour: [0.3, 0.31, 0.055],
  youngColour: [0.38, 0.38, 0.07],
};

const DRAFT = { size: 0.4, samplesPerSide: 2 };

/**
 * Plants of the plain stands in leaf, and one of them golden by nature.
 *
 * @param series 0 is what limits were chosen on; any other number gives other plants, turns, lights and exposures
 * @param count the first so many
 */
export function ailingPlants(series: number, count?: number): AilingPlant[] {
  const leafy = PLAIN_PLACES.filter(({ bare }) => !bare);
  const golden = leafy[(2 * series) % leafy.length] as (typeof leafy)[number];
  return [
    ailingPlant(golden, true, series, leafy.length),
    ...leafy.map((place, k) => ailingPlant(place, false, series, k)),
  ].slice(0, count);
}

function ailingPlant(
  place: (typeof PLAIN_PLACES)[number],
  isGolden: boolean,
  series: number,
  index: number,
): AilingPlant {
  const { season } = place;
  const seed = season.plant.seed + 1000 * (series + 1) + index;
  const leaf = isGolden ? { ...season.plant.leaf, ...GOLDEN } : season.plant.leaf;
  const plant = { ...season.plant, seed, flower: null, leaf };
  const turnDeg = place.turnDeg + 97 * series;
  const viewIn = (week: number) => sittingView({ ...season, plant }, week, turnDeg, DRAFT, null);
  const names = Object.keys(LIGHTS) as LightName[];
  const shot = (week: number, k: number): AilingShot => {
    const light = names[(k + index + series) % names.length] as LightName;
    const exposure = EXPOSURES[(2 * k + index + 3 * series) % EXPOSURES.length] as number;
    return { light, exposure, view: inLight(viewIn(week), light, exposure) };
  };
  const usual = (week: number): AilingShot => ({ light: 'day', exposure: 1, view: viewIn(week) });
  const week = Math.max(2, place.week);
  return {
    name: `${place.name}${isGolden ? ', golden' : ''}`,
    isGolden,
    emptyView: viewIn(week - 2),
    healthy: [usual(week - 1)],
    later: (LATER[index % LATER.length] as (typeof LATER)[number]).map(({ yellow, brown }, k) => {
      const { view, ...rest } = shot(week, k);
      const ailing = { seed: seed + k, yellowShare: yellow, lowest: 0.8, brownShare: brown, brownEdge: 0.4 };
      return { ...rest, view: { ...view, ailing } };
    }),
  };
}

/** A photo of the same in another light and exposure. */
export function inLight(view: ViewOptions, name: LightName, exposure: number): ViewOptions {
  const tint = LIGHTS[name];
  const tinted = (colour: readonly number[]) =>
    colour.map((value, c) => value * (tint[c] as number)) as [number, number, number];
  const { light, finish } = view;
  return {
    ...view,
    light: {
      ...light,
      keyColour: tinted(light.keyColour),
      roomColour: tinted(light.roomColour),
      bounceColour: tinted(light.bounceColour),
    },
    finish: {
      ...finish,
      exposureStops: finish.exposureStops + Math.log2(exposure),
      whiteBalance: finish.whiteBalance.map(
        (gain, c) => gain * (tint[c] as number) ** -CAMERA_MAKES_UP,
      ) as unknown as ViewOptions['finish']['whiteBalance'],
    },
  };
}
