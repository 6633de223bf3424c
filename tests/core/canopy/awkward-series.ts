import type { Mask, Raster } from '../../../core/raster/raster.ts';
import type { LeafLook } from '../../../sample-images/render/plant/plant-spec.ts';
import { renderView, type ViewOptions } from '../../../sample-images/render/render-view.ts';
import { greenhouseScenery } from '../../../sample-images/render/stand/greenhouse.ts';
import type { ViewTruth } from '../../../sample-images/render/truth.ts';
import { seasonOf, smallView } from '../../sample-images/small-view.ts';

/** A photo of an awkward plant in a busy place with its true canopy. */
export interface AwkwardView {
  readonly raster: Raster;
  readonly mask: Mask;
  readonly truth: ViewTruth;
}

/** Leaves that leaf colours in general do not tell: linear reflectances. */
const LEAVES: Record<'bronze' | 'variegated', Partial<LeafLook>> = {
  bronze: { colour: [0.12, 0.055, 0.035], youngColour: [0.2, 0.09, 0.05] },
  variegated: { colour: [0.42, 0.44, 0.26], youngColour: [0.3, 0.4, 0.15], zone: 0.9 },
};

let scenery: ViewOptions['scenery'] = null;

interface Changes {
  /** Exposure above the usual, in stops. */
  readonly stops?: number;
  /** Share of blue taken off and of red put on. */
  readonly warmth?: number;
  /** Radius to which the plant was cut back, mm. */
  readonly cutBackMm?: number | null;
}

/** The greenhouse's regal with other leaves, among its neighbours, small. */
export function awkwardView(
  leaf: keyof typeof LEAVES,
  week: number,
  { stops = 0, warmth = 0, cutBackMm = null }: Changes = {},
): AwkwardView {
  const { stand, pot } = seasonOf('greenhouse-regal');
  scenery ??= greenhouseScenery(stand.light, pot.heightMm);
  const options = smallView('greenhouse-regal', week, 0, { scenery, samplesPerSide: 2 });
  const [red, green, blue] = options.finish.whiteBalance;
  const { raster, canopy, truth } = renderView({
    ...options,
    plant: {
      ...options.plant,
      leaf: { ...options.plant.leaf, ...LEAVES[leaf] },
      radiusMm: cutBackMm === null ? options.plant.radiusMm : [[0, cutBackMm]],
    },
    finish: {
      ...options.finish,
      exposureStops: options.finish.exposureStops + stops,
      whiteBalance: [red * (1 + warmth), green, blue * (1 - warmth)],
    },
  });
  return { raster, mask: canopy, truth };
}
