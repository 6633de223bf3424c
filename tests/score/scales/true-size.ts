import type { Ball } from '../../../core/report.ts';
import { along, dot, length, subtract, type Vec3 } from '../../../sample-images/render/geometry/vector.ts';
import { sightLine } from '../../../sample-images/render/view/camera.ts';
import type { ScaleScene } from './scenes.ts';

/**
 * True mm a px where the plant stands: on its axis at the height of the ball's middle, and of the ball's outline.
 *
 * The ball's middle is where the sight through it meets the axis' plane; its outline reads larger than the ball by
 * 1 ÷ √(1 − (R ÷ D)²), which is taken off.
 *
 * @param looks whether the report measured as if the camera looked straight at the plant: then a px is an angle, and the way to
 *   the plant counts, not its depth along the camera's axis
 */
export function trueMmPerPx(
  { camera }: ScaleScene,
  { centrePx, radiusPx }: Pick<Ball, 'centrePx' | 'radiusPx'>,
  looks: boolean,
): { readonly atAxis: number; readonly atBall: number } {
  const mmPerPxAt = (point: Vec3) => {
    const way = subtract(point, camera.eye);
    return (looks ? length(way) : dot(way, camera.ahead)) / camera.focalPx;
  };
  const sight = sightLine(camera, centrePx[0], centrePx[1]);
  const middle = along(camera.eye, sight, -camera.eye[1] / sight[1]);
  const wayMm = length(subtract(middle, camera.eye));
  const outlineMm = mmPerPxAt(middle) * radiusPx;
  return {
    atAxis: mmPerPxAt(middle),
    atBall: mmPerPxAt(middle) / Math.sqrt(1 + (outlineMm / wayMm) ** 2),
  };
}
