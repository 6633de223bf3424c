import type { FlowerLook } from '../../../sample-images/render/plant/plant-spec.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../../sample-images/render/season/plants.ts';
import { type Draft, sittingView } from '../../../sample-images/render/season/sitting-view.ts';

/** Petals as linear reflectances; the marks on the upper petals in their second colour. */
export const PETALS = {
  white: { colour: [0.76, 0.75, 0.7], blotch: [0.6, 0.42, 0.5] },
  pink: { colour: [0.66, 0.27, 0.38], blotch: [0.35, 0.03, 0.1] },
  red: { colour: [0.5, 0.018, 0.02], blotch: [0.16, 0.004, 0.008] },
  purple: { colour: [0.3, 0.045, 0.33], blotch: [0.1, 0.006, 0.1] },
  salmon: { colour: [0.75, 0.26, 0.19], blotch: [0.5, 0.06, 0.05] },
  yellow: { colour: [0.75, 0.5, 0.04], blotch: [0.6, 0.3, 0.03] },
  primrose: { colour: [0.78, 0.62, 0.16], blotch: [0.7, 0.5, 0.1] },
  bronze: { colour: [0.42, 0.16, 0.03], blotch: [0.35, 0.1, 0.03] },
} as const satisfies Record<string, Pick<FlowerLook, 'colour' | 'blotch'>>;
export type PetalName = keyof typeof PETALS;
export const PETAL_NAMES = Object.keys(PETALS) as PetalName[];

/** One rendered photo of a plant in bloom. */
export interface FloweringPlant {
  readonly name: string;
  readonly petals: PetalName | 'none';
  /** Before a cloth as red as red petals. */
  readonly isRedCloth: boolean;
  readonly view: ViewOptions;
  /** The stand with nothing on it. */
  readonly emptyView: ViewOptions;
}

const DRAFT = { size: 0.5, samplesPerSide: 2 };
/** The heads stand beyond the leaves: the camera takes in more than for a green plant. */
const WIDER = 1.3;
/** Shares of shoots that carry a head. */
const SHARES = [0.08, 0.25, 0.5, 0.9] as const;
const STANDS = ['window-regal', 'corner-angel', 'old-regal', 'porch-zonal'] as const;
const RED_CLOTH = [0.32, 0.03, 0.03] as const;

/**
 * Plants with heads in eight colours, few to full, each before one of four plain backdrops; two without a flower; and red heads before a
 * red cloth.
 *
 * @param first seed; another gives other plants
 * @param draft size and fineness of the photos
 */
export function floweringPlants(first: number, draft: Draft = DRAFT): FloweringPlant[] {
  const blooming = PETAL_NAMES.flatMap((petals, row) =>
    SHARES.map((share, k) => {
      const stand = STANDS[(row + k) % STANDS.length] as string;
      return flowering(first + 10 * row + k, stand, petals, share, false, draft);
    }),
  );
  const green = STANDS.slice(0, 2).map((stand, k) =>
    flowering(first + 80 + k, stand, 'none', 0, false, draft),
  );
  const onRed = SHARES.slice(1, 3).map((share, k) =>
    flowering(first + 90 + k, 'window-regal', 'red', share, true, draft),
  );
  return [...blooming, ...green, ...onRed];
}

function flowering(
  seed: number,
  standOf: string,
  petals: FloweringPlant['petals'],
  share: number,
  isRedCloth: boolean,
  draft: Draft,
): FloweringPlant {
  const season = PLANT_SEASONS.find(({ key }) => key === standOf);
  if (season === undefined) throw new RangeError(`Expected a sample plant's key but received ${standOf}`);
  const flower: FlowerLook | null =
    petals === 'none'
      ? null
      : {
          petalMm: 17,
          floretsPerTruss: 11,
          ruffle: 0.05,
          pedicel: 0.7,
          ...PETALS[petals],
          share,
          stage: [[0, 2]],
        };
  const { backdrop, camera } = season.stand;
  const cloth = isRedCloth ? { wallColour: RED_CLOTH, benchColour: RED_CLOTH } : {};
  const stand = {
    ...season.stand,
    camera: { ...camera, fieldMm: WIDER * camera.fieldMm },
    backdrop: { ...backdrop, ...cloth },
  };
  const plant = { ...season.plant, seed, flower };
  const at = (week: number) => sittingView({ ...season, stand, plant }, week, seed % 360, draft, null);
  return {
    name: `${petals} ${share} ${standOf}${isRedCloth ? ' before red' : ''}`,
    petals,
    isRedCloth,
    view: at(11),
    emptyView: at(12),
  };
}
