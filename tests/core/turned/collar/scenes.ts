import { COLLAR_STEPS } from '../../../../core/turned/collar/collar-code.ts';
import { EDGE_MM, ROW_SHARE } from '../../../../core/turned/collar/collar-geometry.ts';
import { seededChance } from '../../../../sample-images/render/geometry/seeded-random.ts';
import { along, azimuthDirection, UP } from '../../../../sample-images/render/geometry/vector.ts';
import type { RenderedView, ViewOptions } from '../../../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../../../sample-images/render/season/plants.ts';
import {
  BLACK_CLOTH,
  BLUE_SHEET,
  GREY_CLOTH,
  PALE_SWEEP,
} from '../../../../sample-images/render/season/stands.ts';
import type { CollarSpec } from '../../../../sample-images/render/stand/collar.ts';
import type { PotSpec } from '../../../../sample-images/render/stand/pot.ts';

import { pinhole, project } from '../../../../sample-images/render/view/camera.ts';

/** A plant in a pot before a camera, as chance has it. */
export interface CollarScene {
  readonly seed: number;
  readonly view: ViewOptions;
  /** Leaves hang over the rim. */
  readonly leafy: boolean;
  readonly collar: boolean;
  /** Azimuth that faces the camera. */
  readonly turnDeg: number;
}

/** What a scene is to have; the rest is left to chance. */
export interface SceneWish {
  readonly collar: boolean;
  readonly leafy: boolean;
  /** Put on with the usual small faults: a little off, loose, aslant; else perfectly. */
  readonly clumsy: boolean;
}

const STANDS = [GREY_CLOTH, BLACK_CLOTH, PALE_SWEEP, BLUE_SHEET];
const POTS: readonly Pick<PotSpec, 'material' | 'colour'>[] = [
  { material: 'clay', colour: [0.36, 0.15, 0.075] },
  { material: 'plastic', colour: [0.018, 0.018, 0.019] },
  { material: 'plastic', colour: [0.055, 0.13, 0.06] },
  { material: 'plastic', colour: [0.62, 0.61, 0.58] },
  { material: 'plastic', colour: [0.3, 0.1, 0.05] },
];

/**
 * A scene by its seed: pots of 90 to 200 mm, the camera 0.8 to 3 m away and 0 to 400 mm above the rim, any turn, light from any
 * stand, exposure, softness and noise as phones have them.
 */
export function collarScene(seed: number, wish: SceneWish): CollarScene {
  const chance = seededChance(seed * 977 + 5);
  const pick = <T>(list: readonly T[], key: number): T =>
    list[Math.floor(chance.uniform(key) * list.length)] as T;
  const season = pick(PLANT_SEASONS, 1);
  const stand = pick(STANDS, 2);
  const rimMm = Math.round(chance.between(90, 200, 3));
  const turnDeg = chance.between(0, 360, 4);
  const size = rimMm / 130;
  const wide = stand.widthPx > stand.heightPx;
  // What the photo must hold is the plant, about three rims wide, with some room.
  const acrossMm = rimMm * chance.between(3, 5.2, 5);
  const fieldMm = wide ? acrossMm * 1.15 : acrossMm;
  const pot = pick(POTS, 6);
  const week = Math.floor(chance.between(1, 11, 7));
  return {
    seed,
    leafy: wish.leafy,
    collar: wish.collar,
    turnDeg,
    view: {
      plant: {
        ...season.plant,
        seed: 4000 + seed,
        radiusMm: season.plant.radiusMm.map(([at, mm]): [number, number] => [at, mm * size]),
        flower: null,
      },
      pot: {
        ...season.pot,
        ...pot,
        rimMm,
        heightMm: rimMm * chance.between(0.8, 1, 8),
        mark: pick(['dot', 'stick'] as const, 9),
        labelDeg: chance.uniform(10) < 0.3 ? chance.between(0, 360, 11) : null,
        seed,
        ...(wish.collar ? { collar: collarOf(seed, pot, rimMm, wish.clumsy) } : {}),
      },
      week,
      cuts: [],
      turnDeg,
      camera: {
        distanceMm: chance.between(800, 3000, 12),
        heightMm: chance.between(0, 400, 13),
        aimMm: [chance.between(-0.12, 0.12, 14) * fieldMm, 0.45 * rimMm * chance.between(0.6, 1.4, 15)],
        fieldMm,
        rollDeg: 0.7 * chance.normal(16),
      },
      light: {
        ...stand.light,
        keyAzimuthDeg: chance.between(-80, 80, 17),
        keyElevationDeg: chance.between(30, 65, 18),
      },
      backdrop: { ...stand.backdrop, wallMm: Math.max(stand.backdrop.wallMm, 2.2 * rimMm) },
      scenery: null,
      finish: {
        exposureStops: stand.exposureStops + chance.between(-1.2, 1, 19),
        whiteBalance: [1 + chance.between(-0.12, 0.12, 20), 1, 1 + chance.between(-0.12, 0.12, 21)],
        lensBlurPx: chance.between(0.4, 1.8, 22),
        noise: chance.between(0.5, 5, 23),
        noiseSeed: seed,
      },
      widthPx: wide ? 1600 : 1200,
      heightPx: wide ? 1200 : 1600,
      samplesPerSide: 2,
      ...(wish.leafy
        ? {
            hanging: {
              count: Math.round(chance.between(4, 16, 24)),
              azimuthDeg: turnDeg + chance.between(-70, 70, 25),
              spreadDeg: chance.between(30, 90, 26),
              lowestMm: 0.18 * rimMm * chance.between(0.2, 1, 27),
              seed,
            },
          }
        : {}),
    },
  };
}

/** Round the lip, or below it where the lip is lower than the strip is high. */
function collarOf(seed: number, pot: Pick<PotSpec, 'material'>, rimMm: number, clumsy: boolean): CollarSpec {
  const chance = seededChance(seed * 31 + 11);
  const off = (spread: number, key: number) => (clumsy ? spread * chance.normal(key) : 0);
  const loose = clumsy ? chance.between(0, 0.008 * rimMm, 2) : 0;
  const belowLip = pot.material === 'plastic' && chance.uniform(3) < 0.5;
  const radiusMm = rimMm / 2 + 0.3 + loose - (belowLip ? 2.2 : 0);
  return {
    // Its ends meet within 1.2 % of the way round.
    printedForMm: 2 * radiusMm + off(0.006 * rimMm, 1),
    radiusMm,
    dropMm: belowLip ? 0.09 * rimMm + 0.6 : clumsy ? chance.between(0.5, 4, 4) : 1.5,
    taperDeg: belowLip && clumsy ? chance.between(0, 8, 5) : 0,
    sagMm: clumsy ? Math.abs(off(0.008 * rimMm, 6)) : 0,
    sagAzimuthDeg: chance.between(0, 360, 7),
    // The truth is the strip's own: how straight it was put to the mark is the grower's part.
    offDeg: 0,
    paper: chance.between(0.6, 0.85, 8),
    ink: chance.between(0.025, 0.08, 9),
  };
}

/** The same scene with only the pot in the picture, at the same mm a px: quick to render. */
export function potOnly({ view, ...scene }: CollarScene): CollarScene {
  const { rimMm } = view.pot;
  const share = (1.7 * rimMm) / view.camera.fieldMm;
  return {
    ...scene,
    view: {
      ...view,
      camera: { ...view.camera, aimMm: [0, -0.12 * rimMm], fieldMm: 1.7 * rimMm },
      widthPx: Math.round(view.widthPx * share),
      heightPx: Math.round(0.7 * view.widthPx * share),
    },
  };
}

/** How much of the collar is to be seen, by geometry: steps within 65° of the camera that no canopy covers. */
export function stepsInSight({ view }: CollarScene, canopy: RenderedView['canopy']): number {
  const { collar } = view.pot;
  if (collar === undefined) return 0;
  const camera = pinhole(view.camera, view.widthPx, view.heightPx);
  const middleMm = EDGE_MM + ROW_SHARE * collar.printedForMm;
  let seen = 0;
  for (let angle = -65; angle <= 65; angle++) {
    const out = azimuthDirection(angle);
    const place = along(
      [out[0] * collar.radiusMm, out[1] * collar.radiusMm, 0],
      UP,
      -collar.dropMm - middleMm,
    );
    const { xPx, yPx } = project(camera, place);
    const [column, row] = [Math.floor(xPx), Math.floor(yPx)];
    if (row >= canopy.height || canopy.data[row * canopy.width + column] === 0) seen++;
  }
  return seen / (360 / COLLAR_STEPS);
}

/** The rim as a level ellipse in the photo, px. */
export function rimInPhoto({ view }: CollarScene): {
  centrePx: readonly [number, number];
  halfWidthPx: number;
  halfHeightPx: number;
} {
  const camera = pinhole(view.camera, view.widthPx, view.heightPx);
  const [xs, ys]: [number[], number[]] = [[], []];
  for (let angle = 0; angle < 360; angle++) {
    const out = azimuthDirection(angle);
    const { xPx, yPx } = project(camera, [(out[0] * view.pot.rimMm) / 2, (out[1] * view.pot.rimMm) / 2, 0]);
    xs.push(xPx);
    ys.push(yPx);
  }
  const [left, right, top, foot] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return {
    centrePx: [(left + right) / 2, (top + foot) / 2],
    halfWidthPx: (right - left) / 2,
    halfHeightPx: (foot - top) / 2,
  };
}
