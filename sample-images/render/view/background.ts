import { type BackdropSpec, backingAt } from '../stand/backdrop.ts';
import { type Pinhole, sightLine } from './camera.ts';
import { blankPicture, blurPicture, type Picture } from './picture.ts';
import type { Shader } from './shade.ts';

/** Px between the places where the light on bench and cloth is worked out; it is joined smoothly between. */
const STEP_PX = 3;

export interface BackgroundOptions {
  readonly backdrop: BackdropSpec;
  /** Draws what stands behind the bench, in place of a cloth. */
  readonly scenery: ((camera: Pinhole, widthPx: number, heightPx: number) => Picture) | null;
  /** Height of the bench, mm: below the rim, so negative. */
  readonly benchMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Bench and cloth, or bench and scenery, lit and shadowed. */
export function backgroundPicture(options: BackgroundOptions, camera: Pinhole, shader: Shader): Picture {
  const { widthPx, heightPx, backdrop, benchMm } = options;
  const far = options.scenery?.(camera, widthPx, heightPx) ?? null;
  const picture = blankPicture(widthPx, heightPx);
  const falling = coarseLight(options, camera, shader);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const at = 3 * (row * widthPx + column);
      const sight = sightLine(camera, column + 0.5, row + 0.5);
      const backing = backingAt(camera.eye, sight, backdrop, benchMm);
      const behind = far !== null && backing.point[2] > benchMm + 1e-6;
      for (let band = 0; band < 3; band++) {
        picture.light[at + band] = behind
          ? (far.light[at + band] as number)
          : (backing.colour[band] as number) * falling(column, row, band);
      }
    }
  }
  return picture;
}

/** Works out the light on a coarse grid, each place twice with its own scatter, and joins it bilinearly. */
function coarseLight(
  options: BackgroundOptions,
  camera: Pinhole,
  shader: Shader,
): (column: number, row: number, band: number) => number {
  const columns = Math.ceil(options.widthPx / STEP_PX) + 2;
  const rows = Math.ceil(options.heightPx / STEP_PX) + 2;
  const grid = new Float32Array(3 * columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const sight = sightLine(camera, column * STEP_PX + 0.5, row * STEP_PX + 0.5);
      const { point, normal } = backingAt(camera.eye, sight, options.backdrop, options.benchMm);
      for (let pass = 0; pass < 2; pass++) {
        const light = shader.falling(point, normal, column, row + pass * 10007);
        for (let band = 0; band < 3; band++) {
          const at = 3 * (row * columns + column) + band;
          grid[at] = (grid[at] as number) + 0.5 * (light[band] as number);
        }
      }
    }
  }
  const soft = blurPicture({ widthPx: columns, heightPx: rows, light: grid }, 0.9).light;
  return (column, row, band) => {
    const left = Math.floor(column / STEP_PX);
    const top = Math.floor(row / STEP_PX);
    const fx = column / STEP_PX - left;
    const fy = row / STEP_PX - top;
    const at = 3 * (top * columns + left) + band;
    const below = at + 3 * columns;
    const upper = (soft[at] as number) * (1 - fx) + (soft[at + 3] as number) * fx;
    const lower = (soft[below] as number) * (1 - fx) + (soft[below + 3] as number) * fx;
    return upper * (1 - fy) + lower * fy;
  };
}
