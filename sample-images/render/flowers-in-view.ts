import { standingScene, type ViewOptions } from './render-view.ts';
import { pinhole } from './view/camera.ts';
import { rasterise } from './view/rasterise.ts';

/** What of a rendered photo is flower, known because the plant was built. */
export interface FlowersInView {
  /** One byte a px: 1 where the canopy's part at its middle is petal or bud. */
  readonly flower: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  readonly canopyPx: number;
  readonly flowerPx: number;
  /** Px of each flower head that shows at all, largest first. */
  readonly headsPx: readonly number[];
}

/** The true flower at the middle of every px of a photo, without light and colour. Pure. */
export function flowersInView(options: ViewOptions): FlowersInView {
  const { widthPx: width, heightPx: height } = options;
  const scene = standingScene(options, 'fine');
  const { triangle } = rasterise(scene, pinhole(options.camera, width, height), width, height, 1);
  const data = new Uint8Array(width * height);
  const heads = new Map<number, number>();
  let [canopyPx, flowerPx] = [0, 0];
  triangle.forEach((seen, at) => {
    const part = seen < 0 ? undefined : scene.parts[scene.partOf[seen] as number];
    if (part === undefined || !part.canopy) return;
    canopyPx++;
    if (part.material !== 'petal' && part.material !== 'bud') return;
    data[at] = 1;
    flowerPx++;
    heads.set(part.shoot, (heads.get(part.shoot) ?? 0) + 1);
  });
  const headsPx = [...heads.values()].sort((a, b) => b - a);
  return { flower: { width, height, data }, canopyPx, flowerPx, headsPx };
}
