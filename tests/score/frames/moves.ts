import type { CameraMove } from './moved-pairs.ts';

/** Two sample photos of each stand, weeks apart: the first is the stand's first picture. */
export const SAMPLE_PAIRS = [
  ['grey-cloth', 'window-regal/2026-08-23.jpg', 'window-regal/2026-09-27.jpg'],
  ['black-cloth', 'corner-angel/2026-10-18.jpg', 'corner-angel/2026-11-01.jpg'],
  ['pale-sweep', 'old-regal/2026-09-20.jpg', 'old-regal/2026-10-25.jpg'],
  ['blue-sheet', 'porch-zonal/2026-08-23.jpg', 'porch-zonal/2026-10-25.jpg'],
  ['greenhouse-empty', 'greenhouse-regal/empty.jpg', 'greenhouse-regal/2026-10-04.jpg'],
  ['greenhouse', 'greenhouse-regal/2026-09-20.jpg', 'greenhouse-regal/2026-11-22.jpg'],
].map(([stand, reference, photo]) => ({ stand, reference, photo })) as readonly {
  readonly stand: string;
  readonly reference: string;
  readonly photo: string;
}[];

/** Past the limit in one way each, or in two. */
export const FAR_MOVES: readonly CameraMove[] = [
  { shiftPx: [100, 30], turnDeg: 0, zoom: 1 },
  { shiftPx: [0, 0], turnDeg: 7, zoom: 1 },
  { shiftPx: [0, 0], turnDeg: 0, zoom: 0.88 },
  { shiftPx: [-240, 0], turnDeg: -4, zoom: 1.1 },
];
