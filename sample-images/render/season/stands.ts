import type { LightSpec } from '../light/lamps.ts';
import type { StandSpec } from './season-spec.ts';

const WINDOW_LEFT: LightSpec = {
  keyAzimuthDeg: -55,
  keyElevationDeg: 42,
  keySpreadDeg: 16,
  keyStrength: 2.3,
  keyColour: [1, 0.97, 0.92],
  roomStrength: 0.62,
  roomColour: [0.93, 0.98, 1.06],
  bounceColour: [0.2, 0.2, 0.2],
};

/** Grey cloth in front of a north window's wall; the window is at the left of the camera. */
export const GREY_CLOTH: StandSpec = {
  camera: { distanceMm: 1150, heightMm: 230, aimMm: [0, 58], fieldMm: 545, rollDeg: 0 },
  light: WINDOW_LEFT,
  backdrop: {
    wallMm: 340,
    wallColour: [0.17, 0.175, 0.185],
    folds: 0.5,
    benchColour: [0.2, 0.2, 0.2],
    benchGrain: 'cloth',
    bendMm: 60,
    seed: 3,
  },
  exposureStops: 0.05,
  busy: false,
  widthPx: 1600,
  heightPx: 1200,
  storedTurned: false,
};

/** Black velvet behind a slate shelf; the window is at the right. */
export const BLACK_CLOTH: StandSpec = {
  camera: { distanceMm: 1050, heightMm: 190, aimMm: [-6, 62], fieldMm: 490, rollDeg: 0.1 },
  light: { ...WINDOW_LEFT, keyAzimuthDeg: 48, keyElevationDeg: 46, bounceColour: [0.12, 0.12, 0.12] },
  backdrop: {
    wallMm: 420,
    wallColour: [0.014, 0.014, 0.016],
    folds: 0.9,
    benchColour: [0.085, 0.09, 0.095],
    benchGrain: 'slate',
    bendMm: 4,
    seed: 8,
  },
  exposureStops: 0.15,
  busy: false,
  widthPx: 1600,
  heightPx: 1200,
  storedTurned: true,
};

/** A pale sheet that sweeps from table to wall, under a skylight. */
export const PALE_SWEEP: StandSpec = {
  camera: { distanceMm: 1300, heightMm: 260, aimMm: [4, 48], fieldMm: 430, rollDeg: -0.1 },
  light: {
    ...WINDOW_LEFT,
    keyAzimuthDeg: -30,
    keyElevationDeg: 58,
    keySpreadDeg: 22,
    keyStrength: 1.6,
    roomStrength: 0.8,
    bounceColour: [0.34, 0.33, 0.31],
  },
  backdrop: {
    wallMm: 420,
    wallColour: [0.52, 0.51, 0.485],
    folds: 0.12,
    benchColour: [0.52, 0.51, 0.485],
    benchGrain: 'cloth',
    bendMm: 180,
    seed: 12,
  },
  exposureStops: -0.1,
  busy: false,
  widthPx: 1200,
  heightPx: 1600,
  storedTurned: false,
};

/** A wooden table before a blue sheet hung on a line. */
export const BLUE_SHEET: StandSpec = {
  camera: { distanceMm: 1250, heightMm: 240, aimMm: [0, 60], fieldMm: 440, rollDeg: 0 },
  light: {
    ...WINDOW_LEFT,
    keyAzimuthDeg: 38,
    keyElevationDeg: 48,
    keySpreadDeg: 19,
    bounceColour: [0.2, 0.16, 0.12],
  },
  backdrop: {
    wallMm: 380,
    wallColour: [0.075, 0.135, 0.27],
    folds: 0.85,
    benchColour: [0.27, 0.17, 0.095],
    benchGrain: 'wood',
    bendMm: 2,
    seed: 21,
  },
  exposureStops: 0.1,
  busy: false,
  widthPx: 1200,
  heightPx: 1600,
  storedTurned: false,
};

/** The potting bench of a greenhouse, other plants behind. */
export const GREENHOUSE: StandSpec = {
  camera: { distanceMm: 1000, heightMm: 230, aimMm: [5, 54], fieldMm: 500, rollDeg: 0.15 },
  light: {
    ...WINDOW_LEFT,
    keyAzimuthDeg: -35,
    keyElevationDeg: 60,
    keySpreadDeg: 26,
    keyStrength: 1.7,
    keyColour: [1, 0.99, 0.97],
    roomStrength: 1,
    bounceColour: [0.16, 0.15, 0.13],
  },
  backdrop: {
    wallMm: 620,
    wallColour: [0.3, 0.3, 0.3],
    folds: 0,
    benchColour: [0.2, 0.19, 0.17],
    benchGrain: 'matting',
    bendMm: 1,
    seed: 34,
  },
  exposureStops: 0.5,
  busy: true,
  widthPx: 1600,
  heightPx: 1200,
  storedTurned: false,
};
