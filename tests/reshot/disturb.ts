import { seededChance } from '../../sample-images/render/geometry/seeded-random.ts';
import type { ViewOptions } from '../../sample-images/render/render-view.ts';

/** How far photos of one unchanged plant on one day may differ: largest departures unless called a spread. */
export interface Disturbances {
  /** Camera nearer or farther and higher or lower, mm. */
  readonly cameraMm: number;
  /** Camera turned, degrees: rolled, and panned and tilted together. */
  readonly cameraDeg: number;
  /** Zoom, share. */
  readonly zoom: number;
  /** Strength of the light, share; the camera does not make up for it. */
  readonly light: number;
  /** Pot turned, degrees. */
  readonly turnDeg: number;
  /** Spread of each shoot's and each leaf's place, mm. */
  readonly shootMm: number;
  readonly leafMm: number;
}

/** Asked: camera a few mm and up to 1°, zoom 1 %, light ± 20 %, turn ± 2°. How far leaves move is our own choice. */
export const USUAL: Disturbances = {
  cameraMm: 5,
  cameraDeg: 1,
  zoom: 0.01,
  light: 0.2,
  turnDeg: 2,
  shootMm: 1,
  leafMm: 0.5,
};

/** Each source alone, to see which one moves the scores. */
export const SOURCES = {
  camera: ['cameraMm', 'cameraDeg', 'zoom'],
  light: ['light'],
  turn: ['turnDeg'],
  leaves: ['shootMm', 'leafMm'],
  noise: [],
} as const satisfies Record<string, readonly (keyof Disturbances)[]>;

export function only(source: keyof typeof SOURCES): Disturbances {
  const kept: readonly string[] = SOURCES[source];
  return Object.fromEntries(
    Object.entries(USUAL).map(([name, most]) => [name, kept.includes(name) ? most : 0]),
  ) as unknown as Disturbances;
}

/**
 * The view of one more photo of the same plant, with other noise and every disturbance drawn evenly between its bounds (leaves:
 * normally).
 *
 * Notes: a pan shifts the picture by its tangent × the camera's distance. Pan and tilt each take 1 ÷ √2 of the bound.
 */
export function disturbed(view: ViewOptions, shot: number, most: Disturbances): ViewOptions {
  const chance = seededChance(view.plant.seed * 131 + shot);
  const within = (bound: number, key: number) => chance.between(-bound, bound, key);
  const { camera, light } = view;
  const aimMm = (camera.distanceMm * Math.tan((most.cameraDeg * Math.PI) / 180)) / Math.SQRT2;
  const brighter = 1 + within(most.light, 7);
  return {
    ...view,
    turnDeg: view.turnDeg + within(most.turnDeg, 1),
    camera: {
      distanceMm: camera.distanceMm + within(most.cameraMm, 2),
      heightMm: camera.heightMm + within(most.cameraMm, 3),
      aimMm: [camera.aimMm[0] + within(aimMm, 4), camera.aimMm[1] + within(aimMm, 5)],
      fieldMm: camera.fieldMm * (1 + within(most.zoom, 6)),
      rollDeg: camera.rollDeg + within(most.cameraDeg, 8),
    },
    light: {
      ...light,
      keyStrength: light.keyStrength * brighter,
      roomStrength: light.roomStrength * brighter,
    },
    finish: { ...view.finish, noiseSeed: view.finish.noiseSeed + 1009 * (shot + 1) },
    sway: { seed: view.plant.seed * 17 + shot, shootMm: most.shootMm, leafMm: most.leafMm },
  };
}
