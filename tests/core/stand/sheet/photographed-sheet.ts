import type { PointPx, Raster } from '../../../../core/raster/raster.ts';
import type { Homography } from '../../../../core/stand/frame/frame-fit.ts';
import type { SheetPaper } from '../../../../core/stand/known-stand.ts';
import { isDarkAt, RING_UNIT_MM } from '../../../../core/stand/sheet/ring-kinds.ts';
import {
  type PointMm,
  type SheetGeometry,
  sheetGeometry,
} from '../../../../core/stand/sheet/sheet-geometry.ts';

/** A stand sheet before a pinhole camera. */
export interface SheetScene {
  readonly paper: SheetPaper;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
  /** Camera to the sheet's middle along the camera's axis, mm. */
  readonly distanceMm: number;
  /** The sheet's middle beside the camera's axis, mm: right, down. */
  readonly asideMm: readonly [number, number];
  /** Tilt of the sheet, degrees, and the direction on screen (clockwise from the right) of the line it is tilted about. */
  readonly tiltDeg: number;
  readonly tiltAboutDeg: number;
  /** Turn of the sheet in its own plane, clockwise. */
  readonly turnDeg: number;
  /** Standard deviations: blur, px, in linear light; noise, display steps. */
  readonly blurPx: number;
  readonly noiseSteps: number;
  /** How much the light falls from the left edge of the picture to the right one, as a share. */
  readonly lightFall: number;
  /** Factors on linear red, green and blue. */
  readonly cast: readonly [number, number, number];
  /** Light of the paper at the left, linear. */
  readonly paperLight: number;
  /** Green discs over the sheet, mm on the paper: leaves before it. */
  readonly leaves: readonly { readonly centreMm: PointMm; readonly radiusMm: number }[];
  readonly seed: number;
}

export const SCENE: SheetScene = {
  paper: 'A4',
  widthPx: 1600,
  heightPx: 1200,
  focalPx: 1200,
  distanceMm: 1500,
  asideMm: [0, 0],
  tiltDeg: 0,
  tiltAboutDeg: 90,
  turnDeg: 0,
  blurPx: 0.6,
  noiseSteps: 0,
  lightFall: 0,
  cast: [1, 1, 1],
  paperLight: 0.7,
  leaves: [],
  seed: 1,
};

/** Samples to a px along each side. */
const FINE = 4;

const INK_SHARE = 0.05;

export interface SheetPhoto {
  readonly raster: Raster;
  readonly paperToPhoto: Homography;
  readonly geometry: SheetGeometry;
  readonly centreOf: (id: string) => PointPx;
  /** Depth of the sheet's middle ÷ focal length. */
  readonly mmPerPx: number;
}

export function photographSheet(changes: Partial<SheetScene>): SheetPhoto {
  const scene = { ...SCENE, ...changes };
  const geometry = sheetGeometry(scene.paper);
  const paperToPhoto = mapOfScene(scene, geometry);
  const light = exposed(scene, geometry, paperToPhoto);
  return {
    raster: { width: scene.widthPx, height: scene.heightPx, data: developed(light, scene) },
    paperToPhoto,
    geometry,
    centreOf: (id) => {
      const mark = geometry.marks.find((one) => one.id === id);
      if (mark === undefined) throw new Error(`no mark ${id}`);
      return mapped(paperToPhoto, mark.centreMm);
    },
    mmPerPx: scene.distanceMm / scene.focalPx,
  };
}

export function mapped(map: Homography, [x, y]: readonly [number, number]): PointPx {
  const w = map[6] * x + map[7] * y + map[8];
  return [(map[0] * x + map[1] * y + map[2]) / w, (map[3] * x + map[4] * y + map[5]) / w];
}

/** K · [r1 r2 t], written out. */
export function mapOfScene(scene: SheetScene, { widthMm, heightMm }: SheetGeometry): Homography {
  const [turn, tilt, about] = [radians(scene.turnDeg), radians(scene.tiltDeg), radians(scene.tiltAboutDeg)];
  const axis: Vector = [Math.cos(about), Math.sin(about), 0];
  const [ax, ay, az] = rotated([Math.cos(turn), Math.sin(turn), 0], axis, tilt);
  const [bx, by, bz] = rotated([-Math.sin(turn), Math.cos(turn), 0], axis, tilt);
  const tx = scene.asideMm[0] - (ax * widthMm) / 2 - (bx * heightMm) / 2;
  const ty = scene.asideMm[1] - (ay * widthMm) / 2 - (by * heightMm) / 2;
  const tz = scene.distanceMm - (az * widthMm) / 2 - (bz * heightMm) / 2;
  const [f, cx, cy] = [scene.focalPx, scene.widthPx / 2, scene.heightPx / 2];
  const right = [f * ax + cx * az, f * bx + cx * bz, f * tx + cx * tz] as const;
  const down = [f * ay + cy * az, f * by + cy * bz, f * ty + cy * tz] as const;
  return [...right, ...down, az, bz, tz];
}

type Vector = readonly [number, number, number];

function radians(deg: number): number {
  return (deg * Math.PI) / 180;
}

/** Rodrigues' rotation. */
function rotated([x, y, z]: Vector, [kx, ky, kz]: Vector, turn: number): Vector {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const along = (1 - c) * (x * kx + y * ky + z * kz);
  return [
    x * c + (ky * z - kz * y) * s + kx * along,
    y * c + (kz * x - kx * z) * s + ky * along,
    z * c + (kx * y - ky * x) * s + kz * along,
  ];
}

function exposed(scene: SheetScene, geometry: SheetGeometry, map: Homography): Float32Array {
  const { widthPx, heightPx } = scene;
  const light = new Float32Array(3 * widthPx * heightPx);
  const back = inverse(map);
  const box = boxOf(scene, geometry, map);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const isNear = row >= box.top && row < box.bottom && column >= box.left && column < box.right;
      const colour = isNear ? meanColour(scene, geometry, back, column, row) : WALL;
      const lamp = scene.paperLight * (1 - (scene.lightFall * column) / widthPx);
      for (let c = 0; c < 3; c++) {
        light[3 * (row * widthPx + column) + c] = lamp * at(scene.cast, c) * at(colour, c);
      }
    }
  }
  blur(light, scene, box);
  return light;
}

/** What encloses the sheet and the leaves before it, with room for the blur; the wall is even beyond it. */
function boxOf({ widthPx, heightPx, leaves }: SheetScene, geometry: SheetGeometry, map: Homography): Box {
  const corners: PointMm[] = [0, 1].flatMap((x) =>
    [0, 1].map((y): PointMm => [x * geometry.widthMm, y * geometry.heightMm]),
  );
  for (const { centreMm, radiusMm } of leaves) {
    for (const [x, y] of [
      [-1, -1],
      [-1, 1],
      [1, -1],
      [1, 1],
    ] as const) {
      corners.push([centreMm[0] + x * radiusMm, centreMm[1] + y * radiusMm]);
    }
  }
  const points = corners.map((corner) => mapped(map, corner));
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return {
    left: Math.max(0, Math.floor(Math.min(...xs)) - 12),
    right: Math.min(widthPx, Math.ceil(Math.max(...xs)) + 12),
    top: Math.max(0, Math.floor(Math.min(...ys)) - 12),
    bottom: Math.min(heightPx, Math.ceil(Math.max(...ys)) + 12),
  };
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function meanColour(
  scene: SheetScene,
  geometry: SheetGeometry,
  back: Homography,
  column: number,
  row: number,
): number[] {
  const sum = [0, 0, 0];
  for (let fine = 0; fine < FINE * FINE; fine++) {
    const x = column + ((fine % FINE) + 0.5) / FINE;
    const y = row + (Math.floor(fine / FINE) + 0.5) / FINE;
    const colour = colourAt(scene, geometry, mapped(back, [x, y]));
    for (let c = 0; c < 3; c++) sum[c] = at(sum, c) + at(colour, c) / (FINE * FINE);
  }
  return sum;
}

function at(values: ArrayLike<number>, k: number): number {
  return values[k] as number;
}

const WALL = [0.42, 0.4, 0.37] as const;
const LEAF = [0.08, 0.2, 0.05] as const;
const PAPER = [1, 1, 1] as const;
const INK = [INK_SHARE, INK_SHARE, INK_SHARE] as const;

function colourAt(scene: SheetScene, geometry: SheetGeometry, [x, y]: PointMm): readonly number[] {
  for (const { centreMm, radiusMm } of scene.leaves) {
    if (Math.hypot(x - centreMm[0], y - centreMm[1]) < radiusMm) return LEAF;
  }
  if (!(x >= 0 && y >= 0 && x <= geometry.widthMm && y <= geometry.heightMm)) return WALL;
  for (const { kind, centreMm, radiusMm } of geometry.marks) {
    const away = Math.hypot(x - centreMm[0], y - centreMm[1]);
    if (away < radiusMm) return isDarkAt(kind, away / RING_UNIT_MM) ? INK : PAPER;
  }
  for (const patch of geometry.greys) {
    const [right, down] = [x - patch.leftMm, y - patch.topMm];
    if (right >= 0 && down >= 0 && right < patch.widthMm && down < patch.heightMm) {
      return [patch.nominalReflectance, patch.nominalReflectance, patch.nominalReflectance];
    }
  }
  const [ax, tip] = geometry.arrow.tipMm;
  if (
    y > tip &&
    y < geometry.arrow.tailMm[1] - 7 &&
    Math.abs(x - ax) < (y < tip + 20 ? (13 * (y - tip)) / 20 : 3.5)
  ) {
    return INK;
  }
  // Writing, as strokes of ink about as dense as type.
  if (x > 8 && x < 120 && y > 103 && y < 140 && (y - 103) % 6.4 < 3 && x % 2.4 < 0.6) return INK;
  return PAPER;
}

/** Separable Gaussian within the box; the border repeats its last pixel. */
function blur(light: Float32Array, { blurPx, widthPx }: SheetScene, box: Box): void {
  if (blurPx <= 0) return;
  const reach = Math.ceil(3.5 * blurPx);
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * blurPx ** 2)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  for (const across of [true, false]) {
    const from = light.slice();
    const step = across ? 3 : 3 * widthPx;
    const [least, most] = across ? [box.left, box.right - 1] : [box.top, box.bottom - 1];
    for (let row = box.top; row < box.bottom; row++) {
      for (let column = box.left; column < box.right; column++) {
        const here = across ? column : row;
        for (let c = 0; c < 3; c++) {
          const i = 3 * (row * widthPx + column) + c;
          let sum = 0;
          for (let k = -reach; k <= reach; k++) {
            const to = Math.min(Math.max(here + k, least), most);
            sum += at(weights, k + reach) * at(from, i + (to - here) * step);
          }
          light[i] = sum / total;
        }
      }
    }
  }
}

function developed(light: Float32Array, { noiseSteps, seed }: SheetScene): Uint8Array {
  const random = seeded(seed);
  return Uint8Array.from(light, (share) => {
    const step = 255 * (share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055);
    const noise =
      noiseSteps > 0
        ? noiseSteps * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
        : 0;
    return Math.min(255, Math.max(0, Math.round(step + noise)));
  });
}

/** Park and Miller's minimal standard generator. */
export function seeded(seed: number): () => number {
  let state = (seed * 7919) % 2147483647 || 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return (state - 1) / 2147483646;
  };
}

function inverse([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}
