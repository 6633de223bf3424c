import { type BallFit, fitBall } from '../../../core/measures/ball.ts';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import type { Camera, TurnedView } from '../../../core/turned/turned-view.ts';
import type { RenderedSilhouette } from '../../../sample-images/render/render-silhouette.ts';

/** A rendered view as the measuring hands it on. */
export interface MeasuredRender {
  readonly view: TurnedView & { readonly turnDeg: number };
  readonly silhouette: Silhouette;
  readonly ball: BallFit;
  readonly rim: {
    readonly rimLeftPx: readonly [number, number];
    readonly rimRightPx: readonly [number, number];
  };
}

/** The exact mask of a render with the rim and the scale of its truth. */
export function measuredRender({ canopy, truth, turnDeg }: RenderedSilhouette): MeasuredRender {
  const { rimLeftPx, rimRightPx, xPx } = truth.axis;
  const rim = { rimLeftPx, rimRightPx };
  const silhouette = readSilhouette(canopy);
  const ball = silhouette === null ? null : fitBall(silhouette, rim);
  if (silhouette === null || ball === null) throw new Error('A rendered plant has no ball.');
  return {
    silhouette,
    ball,
    rim,
    view: {
      turnDeg,
      canopy,
      mmPerPx: truth.mmPerPx,
      axisXPx: xPx,
      rimYPx: (rimLeftPx[1] + rimRightPx[1]) / 2,
      axisFrom: 'rim',
      potPlace: null,
      toPhoto: (placePx) => placePx,
      potHalfWidthPx: (rimRightPx[0] - rimLeftPx[0]) / 2,
      ballRadiusPx: ball.radiusPx,
      lopsidednessPercent: (100 * (silhouette.centroidPx[0] - xPx)) / ball.radiusPx,
      lopsidednessPlusMinus: 1.5,
    },
  };
}

export function cameraOf({ truth }: RenderedSilhouette): Camera {
  return { distanceMm: truth.camera.distanceMm, heightMm: truth.camera.heightMm };
}
