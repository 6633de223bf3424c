import type { LeafLook, PlantSpec } from '../../../sample-images/render/plant/plant-spec.ts';
import { PLANT_SEASONS } from '../../../sample-images/render/season/plants.ts';
import type { PlantSeason, StandSpec } from '../../../sample-images/render/season/season-spec.ts';
import { GREENHOUSE } from '../../../sample-images/render/season/stands.ts';
import type { PotSpec } from '../../../sample-images/render/stand/pot.ts';

/** One plant in one place, of which several photos are made: with other blooms, with other light. */
export interface RenderPlace {
  readonly name: string;
  readonly season: PlantSeason;
  readonly week: number;
  readonly turnDeg: number;
  /** Cut back to its stems: it cannot bloom. */
  readonly bare?: boolean;
}

interface Changes {
  readonly plant?: Partial<PlantSpec>;
  readonly pot?: Partial<PotSpec>;
  readonly stand?: Partial<Omit<StandSpec, 'camera' | 'backdrop'>>;
  readonly camera?: Partial<StandSpec['camera']>;
  readonly backdrop?: Partial<StandSpec['backdrop']>;
}

/** A sample plant's season with another seed and other things changed, so that no score repeats a sample's photo. */
function place(
  name: string,
  key: string,
  week: number,
  turnDeg: number,
  seed: number,
  changes: Changes = {},
) {
  const season = PLANT_SEASONS.find((one) => one.key === key);
  if (season === undefined) throw new RangeError(`Expected a sample plant's key but received ${key}`);
  const { plant, pot, stand } = season;
  return {
    name,
    week,
    turnDeg,
    season: {
      ...season,
      plant: { ...plant, seed, ...changes.plant },
      pot: { ...pot, ...changes.pot },
      stand: {
        ...stand,
        ...changes.stand,
        camera: { ...stand.camera, ...changes.camera },
        backdrop: { ...stand.backdrop, ...changes.backdrop },
      },
    },
  };
}

/** The regal leaf, from which others differ in colour and size. */
const LEAF = PLANT_SEASONS[0]?.plant.leaf as LeafLook;
const CLAY: Partial<PotSpec> = { material: 'clay', colour: [0.36, 0.15, 0.075] };
const WHITE_POT: Partial<PotSpec> = { material: 'plastic', colour: [0.62, 0.61, 0.58] };
const BLACK_POT: Partial<PotSpec> = { material: 'plastic', colour: [0.018, 0.018, 0.019] };
const GREEN_POT: Partial<PotSpec> = { material: 'plastic', colour: [0.055, 0.13, 0.06] };

/** Before a cloth, sheet or wall. */
export const PLAIN_PLACES: readonly RenderPlace[] = [
  place('grey-cloth', 'window-regal', 6, 20, 111),
  place('black-cloth', 'corner-angel', 5, 70, 127, { camera: { fieldMm: 640, aimMm: [-6, 80] } }),
  { ...place('pale-sweep-bare', 'old-regal', 4, 0, 143), bare: true },
  place('pale-sweep-full', 'old-regal', 11, 130, 144, { pot: { ...BLACK_POT, labelDeg: 20 } }),
  place('blue-sheet', 'porch-zonal', 8, 45, 158, { pot: GREEN_POT }),
  place('white-studio', 'porch-zonal', 4, 200, 159, {
    pot: WHITE_POT,
    backdrop: { wallColour: [0.78, 0.78, 0.77], benchColour: [0.78, 0.78, 0.77], bendMm: 180, folds: 0 },
  }),
  place('cream-wall', 'window-regal', 11, 250, 112, {
    pot: CLAY,
    plant: { leaf: { ...LEAF, colour: [0.2, 0.24, 0.05], youngColour: [0.3, 0.33, 0.07] } },
    camera: { fieldMm: 680, aimMm: [0, 80] },
    backdrop: {
      wallColour: [0.5, 0.42, 0.29],
      benchColour: [0.27, 0.17, 0.095],
      benchGrain: 'wood',
      folds: 0.1,
    },
  }),
  place('mid-grey-low-camera', 'corner-angel', 2, 300, 128, {
    pot: { ...CLAY, mark: 'dot' },
    plant: { leaf: { ...LEAF, radiusMm: 17, colour: [0.09, 0.13, 0.08], youngColour: [0.16, 0.2, 0.12] } },
    camera: { heightMm: 90, fieldMm: 580, aimMm: [0, 80] },
    backdrop: { wallColour: [0.3, 0.3, 0.31], benchColour: [0.3, 0.3, 0.31] },
  }),
];

/** In the greenhouse, from five camera places, each with its own photo of the bench with nothing on it. */
export const BUSY_PLACES: readonly RenderPlace[] = [
  place('glass-middle', 'greenhouse-regal', 4, 30, 171, { camera: { fieldMm: 620, aimMm: [5, 75] } }),
  place('glass-left', 'greenhouse-regal', 7, 90, 172, {
    pot: CLAY,
    camera: { aimMm: [-110, 75], distanceMm: 1150, fieldMm: 700 },
  }),
  place('glass-high', 'porch-zonal', 3, 10, 173, {
    pot: GREEN_POT,
    stand: { ...GREENHOUSE, widthPx: 1200, heightPx: 1600 },
    camera: { ...GREENHOUSE.camera, heightMm: 380, fieldMm: 470 },
    backdrop: GREENHOUSE.backdrop,
  }),
  place('glass-near', 'corner-angel', 6, 160, 174, {
    pot: BLACK_POT,
    stand: GREENHOUSE,
    camera: { ...GREENHOUSE.camera, distanceMm: 800, fieldMm: 640, aimMm: [5, 75] },
    backdrop: GREENHOUSE.backdrop,
  }),
  place('glass-right', 'window-regal', 2, 270, 175, {
    pot: WHITE_POT,
    stand: GREENHOUSE,
    camera: { ...GREENHOUSE.camera, aimMm: [110, 70], heightMm: 150, fieldMm: 680 },
    backdrop: GREENHOUSE.backdrop,
  }),
];
