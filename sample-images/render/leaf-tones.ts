import { standingScene, type ViewOptions } from './render-view.ts';
import { pinhole } from './view/camera.ts';
import { rasterise } from './view/rasterise.ts';
import { cornerWeights, interpolate } from './view/triangle-place.ts';

/** What a px of a rendered photo shows: nothing of the canopy, healthy leaf or stem, yellow leaf, brown margin, flower or bud. */
export const LEAF_TONES = ['none', 'green', 'yellow', 'brown', 'flower'] as const;
export type LeafTone = (typeof LEAF_TONES)[number];

/** One byte a px, an index into `LEAF_TONES`. */
export interface TonePicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** The true tone at the middle of every px of a photo, without light and colour. Pure. */
export function leafTones(options: ViewOptions): TonePicture {
  const { widthPx: width, heightPx: height } = options;
  const scene = standingScene(options, 'fine');
  const visible = rasterise(scene, pinhole(options.camera, width, height), width, height, 1);
  const data = new Uint8Array(width * height);
  for (let at = 0; at < data.length; at++) {
    const triangle = visible.triangle[at] as number;
    const part = triangle < 0 ? undefined : scene.parts[scene.partOf[triangle] as number];
    if (part === undefined || !part.canopy) continue;
    const toneHere = (): LeafTone => {
      if (part.material === 'petal' || part.material === 'bud') return 'flower';
      const [, , edge = 0, yellow = 0] = part.pattern;
      if (part.material !== 'leaf') return 'green';
      const weights = cornerWeights(
        scene,
        visible,
        triangle,
        (at % width) + 0.5,
        Math.floor(at / width) + 0.5,
      );
      const [, , rho] = interpolate(scene.coordinates, scene, triangle, weights);
      if (edge > 0 && rho > 1 - edge) return 'brown';
      return yellow > 0 ? 'yellow' : 'green';
    };
    data[at] = LEAF_TONES.indexOf(toneHere());
  }
  return { width, height, data };
}
