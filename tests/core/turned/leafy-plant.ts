import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import type { NearCamera, TurnedView } from '../../../core/turned/turned-view.ts';

/** An ellipsoid: middle (u, v, h) in mm and, row by row, the inverse of its shape: (p − c)ᵀ A (p − c) ≤ 1. */
export interface Ellipsoid {
  readonly middle: readonly [number, number, number];
  /** a, b, c along three axes at right angles. */
  readonly halfAxes: readonly [number, number, number];
  readonly axes: readonly [Vector, Vector, Vector];
}
type Vector = readonly [number, number, number];

/** A plant made of ellipsoids; its silhouette under a pinhole camera is known exactly. */
export interface Plant {
  readonly parts: readonly Ellipsoid[];
  readonly radiusMm: number;
}

export interface PlantWish {
  readonly seed: number;
  readonly radiusMm: number;
  /** How far the body's middle stands off the axis, share of the radius, and where. */
  readonly lean: number;
  readonly leanAzimuthDeg: number;
  readonly leaves: number;
  readonly lobes: number;
}

const UPRIGHT: readonly [Vector, Vector, Vector] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

export function ball(radiusMm: number, middle: Vector): Plant {
  return { radiusMm, parts: [{ middle, halfAxes: [radiusMm, radiusMm, radiusMm], axes: UPRIGHT }] };
}

/** A bushy plant: a body, some lobes (shoulders and shoots) and many leaves, all drawn from the seed. */
export function leafyPlant({ seed, radiusMm, lean, leanAzimuthDeg, leaves, lobes }: PlantWish): Plant {
  const noise = seededNoise(seed);
  const direction = (): Vector => unitOf([noise.normal(), noise.normal(), noise.normal()]);
  const azimuth = (leanAzimuthDeg * Math.PI) / 180;
  const middle: Vector = [
    lean * radiusMm * Math.cos(azimuth),
    lean * radiusMm * Math.sin(azimuth),
    radiusMm * 0.85,
  ];
  const body = 0.86 * radiusMm;
  const parts: Ellipsoid[] = [{ middle, halfAxes: [body, body, 0.92 * body], axes: UPRIGHT }];
  const place = (towards: Vector, out: number): Vector => [
    middle[0] + out * towards[0],
    middle[1] + out * towards[1],
    middle[2] + 0.95 * out * towards[2],
  ];
  for (let k = 0; k < lobes; k++) {
    const towards = direction();
    const size = radiusMm * (0.2 + 0.06 * noise.normal());
    const out = radiusMm * (0.74 + 0.05 * noise.normal());
    parts.push({
      middle: place(towards, out),
      halfAxes: [Math.abs(size) * 1.3, Math.abs(size), Math.abs(size)],
      axes: frameOf(towards, direction()),
    });
  }
  for (let k = 0; k < leaves; k++) {
    const towards = direction();
    const size = radiusMm * 0.13 * (1 + 0.2 * noise.normal());
    const tilt = unitOf([
      towards[0] + 0.8 * noise.normal(),
      towards[1] + 0.8 * noise.normal(),
      towards[2] + 0.8 * noise.normal(),
    ]);
    const out = radiusMm * (0.87 + 0.04 * noise.normal());
    parts.push({
      middle: place(towards, out),
      halfAxes: [0.25 * size, size, size],
      axes: frameOf(tilt, direction()),
    });
  }
  return { parts, radiusMm };
}

/** The plant moved sideways, mm. */
export function movedPlant(plant: Plant, u: number, v: number): Plant {
  return {
    ...plant,
    parts: plant.parts.map((part) => ({
      ...part,
      middle: [part.middle[0] + u, part.middle[1] + v, part.middle[2]],
    })),
  };
}

/** Outermost reach towards an azimuth (support function), mm. */
export function reachOf({ parts }: Plant, azimuthDeg: number): number {
  const azimuth = (azimuthDeg * Math.PI) / 180;
  const towards: Vector = [Math.cos(azimuth), Math.sin(azimuth), 0];
  return Math.max(
    ...parts.map(
      ({ middle, halfAxes, axes }) =>
        dot(middle, towards) +
        Math.hypot(...axes.map((axis, k) => (halfAxes[k] as number) * dot(axis, towards))),
    ),
  );
}

/** Volume by counting on a grid, ml. */
export function volumeMl({ parts, radiusMm }: Plant, cells = 90): number {
  const reach = 1.5 * radiusMm;
  const step = (2 * reach) / cells;
  let count = 0;
  for (let k = 0; k < cells ** 3; k++) {
    const point: Vector = [
      -reach + step * ((k % cells) + 0.5),
      -reach + step * ((Math.floor(k / cells) % cells) + 0.5),
      0.85 * radiusMm - reach + step * (Math.floor(k / cells / cells) + 0.5),
    ];
    if (parts.some((part) => inside(part, point))) count++;
  }
  return (count * step ** 3) / 1000;
}

export interface Shot {
  readonly turnDeg: number;
  readonly camera: NearCamera | null;
  readonly mmPerPx: number;
  /** The plant stands this much further right than its axis says, mm. */
  readonly asideMm?: number;
  readonly plusMinus?: number;
  readonly wholeBallPx?: number;
  readonly potHalfWidthMm?: number;
}

const SIDE_MM = 4;

/** The mask of a plant in one view, from the formula of its parts' outlines. */
export function photograph(plant: Plant, shot: Shot): TurnedView & { readonly turnDeg: number } {
  const { turnDeg, camera, mmPerPx, asideMm = 0 } = shot;
  const reach = 1.75 * plant.radiusMm;
  const width = Math.ceil((2 * reach) / mmPerPx);
  const top = 2.4 * plant.radiusMm;
  const height = Math.ceil((top + 0.5 * plant.radiusMm) / mmPerPx);
  const data = new Uint8Array(width * height);
  const axisXPx = width / 2 + 0.3;
  const rimYPx = top / mmPerPx;
  const turn = (turnDeg * Math.PI) / 180;
  for (const part of plant.parts) {
    const [u, v, h] = part.middle;
    const right: Vector = [-Math.sin(turn), Math.cos(turn), 0];
    const near: Vector = [Math.cos(turn), Math.sin(turn), 0];
    const seen: Vector = [dot([u, v, h], right) + asideMm, h, dot([u, v, h], near)];
    const axes = part.axes.map((axis): Vector => [dot(axis, right), axis[2], dot(axis, near)]);
    drawPart({ middle: seen, halfAxes: part.halfAxes, axes: axes as unknown as Ellipsoid['axes'] }, camera, {
      data,
      width,
      height,
      axisXPx,
      rimYPx,
      mmPerPx,
    });
  }
  const pot = shot.potHalfWidthMm;
  if (pot !== undefined) {
    for (let y = Math.ceil(rimYPx); y < height; y++)
      for (let x = 0; x < width; x++)
        if (Math.abs(x + 0.5 - axisXPx) * mmPerPx < pot) data[y * width + x] = 0;
  }
  const canopy: Mask = { width, height, data };
  const ballRadiusPx = shot.wholeBallPx ?? plant.radiusMm / mmPerPx;
  return {
    turnDeg,
    canopy,
    mmPerPx,
    axisXPx,
    rimYPx,
    potHalfWidthPx: pot === undefined ? null : pot / mmPerPx,
    ballRadiusPx,
    lopsidednessPercent: (100 * (meanX(canopy) - axisXPx)) / ballRadiusPx,
    lopsidednessPlusMinus: shot.plusMinus ?? 1.5,
    axisFrom: 'rim',
    potPlace: { xPx: axisXPx, mmPerPx },
    toPhoto: (placePx) => placePx,
  };
}

/** Views at the turns given. */
export function sitting(plant: Plant, turnsDeg: readonly number[], shot: Omit<Shot, 'turnDeg'>) {
  return turnsDeg.map((turnDeg) => photograph(plant, { ...shot, turnDeg }));
}

interface Picture {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly axisXPx: number;
  readonly rimYPx: number;
  readonly mmPerPx: number;
}

/** A sight line from camera C along d meets (p − c)ᵀA(p − c) ≤ 1 when (dᵀA q)² ≥ dᵀA d (qᵀA q − 1), q = C − c. */
function drawPart({ middle, halfAxes, axes }: Ellipsoid, camera: NearCamera | null, picture: Picture): void {
  const { data, width, height, axisXPx, rimYPx, mmPerPx } = picture;
  const scaled = axes.map(
    (axis, k) => axis.map((value) => value / (halfAxes[k] as number)) as unknown as Vector,
  );
  const largest = Math.max(...halfAxes) + SIDE_MM;
  const zoom = camera === null ? 1 : camera.distanceMm / (camera.distanceMm - middle[2] - largest);
  const far = camera === null ? 1 : camera.distanceMm / (camera.distanceMm - middle[2] + largest);
  const eyeH = camera?.heightMm ?? 0;
  const [xs, ys] = [
    [middle[0] - largest, middle[0] + largest].flatMap((x) => [x * zoom, x * far]),
    [middle[1] - largest, middle[1] + largest].flatMap((y) => [
      eyeH + (y - eyeH) * zoom,
      eyeH + (y - eyeH) * far,
    ]),
  ];
  const x0 = Math.max(0, Math.floor(axisXPx + Math.min(...xs) / mmPerPx));
  const x1 = Math.min(width - 1, Math.ceil(axisXPx + Math.max(...xs) / mmPerPx));
  const y0 = Math.max(0, Math.floor(rimYPx - Math.max(...ys) / mmPerPx));
  const y1 = Math.min(height - 1, Math.ceil(rimYPx - Math.min(...ys) / mmPerPx));
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      if (data[y * width + x] === 1) continue;
      const [px, py] = [(x + 0.5 - axisXPx) * mmPerPx, (rimYPx - y - 0.5) * mmPerPx];
      const eye: Vector = camera === null ? [px, py, 0] : [0, camera.heightMm, camera.distanceMm];
      const ray: Vector = camera === null ? [0, 0, 1] : [px, py - eye[1], -eye[2]];
      const from: Vector = [eye[0] - middle[0], eye[1] - middle[1], eye[2] - middle[2]];
      let [dd, dq, qq] = [0, 0, 0];
      for (const axis of scaled) {
        const [d, q] = [dot(axis, ray), dot(axis, from)];
        dd += d * d;
        dq += d * q;
        qq += q * q;
      }
      if (dq * dq >= dd * (qq - 1)) data[y * width + x] = 1;
    }
  }
}

function inside({ middle, halfAxes, axes }: Ellipsoid, point: Vector): boolean {
  const from: Vector = [point[0] - middle[0], point[1] - middle[1], point[2] - middle[2]];
  let sum = 0;
  for (let k = 0; k < 3; k++) sum += (dot(axes[k] as Vector, from) / (halfAxes[k] as number)) ** 2;
  return sum <= 1;
}

function meanX({ width, data }: Mask): number {
  let [sum, count] = [0, 0];
  for (let k = 0; k < data.length; k++) {
    if (data[k] === 0) continue;
    sum += (k % width) + 0.5;
    count++;
  }
  return sum / count;
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function unitOf(vector: Vector): Vector {
  const length = Math.hypot(...vector);
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}

/** Three axes at right angles, the first given. */
function frameOf(first: Vector, other: Vector): readonly [Vector, Vector, Vector] {
  const along = dot(first, other);
  const second = unitOf([
    other[0] - along * first[0],
    other[1] - along * first[1],
    other[2] - along * first[2],
  ]);
  const third: Vector = [
    first[1] * second[2] - first[2] * second[1],
    first[2] * second[0] - first[0] * second[2],
    first[0] * second[1] - first[1] * second[0],
  ];
  return [first, second, third];
}

/**
 * The same view as a cut-out might give it: leaf-sized bits of its outline missed or added, and the axis misread.
 *
 * @param bitMm half the size of a bit
 * @param axisMm how far right of its true place the axis is read
 */
export function roughCutOut<View extends TurnedView>(
  view: View,
  { seed, bits, bitMm, axisMm }: { seed: number; bits: number; bitMm: number; axisMm: number },
): View {
  const noise = seededNoise(seed);
  const { width, height, data } = view.canopy;
  const rough = data.slice();
  const mmPerPx = view.mmPerPx ?? 1;
  const edge: number[] = [];
  for (let k = width; k < data.length - width; k++) {
    if (data[k] === 1 && (data[k - 1] === 0 || data[k + 1] === 0 || data[k - width] === 0)) edge.push(k);
  }
  for (let bit = 0; bit < bits; bit++) {
    const at = edge[Math.floor(Math.abs(noise.normal() * 7919)) % edge.length] as number;
    const size = (bitMm * (1 + 0.3 * noise.normal())) / mmPerPx;
    const value = noise.normal() > 0 ? 1 : 0;
    const [cx, cy] = [at % width, Math.floor(at / width)];
    for (let y = Math.max(0, Math.ceil(cy - size)); y <= Math.min(height - 1, cy + size); y++)
      for (let x = Math.max(0, Math.ceil(cx - size)); x <= Math.min(width - 1, cx + size); x++)
        if (Math.hypot(x - cx, y - cy) <= size) rough[y * width + x] = value;
  }
  const axisXPx = view.axisXPx + axisMm / mmPerPx;
  const canopy: Mask = { width, height, data: rough };
  return {
    ...view,
    canopy,
    axisXPx,
    lopsidednessPercent: (100 * (meanX(canopy) - axisXPx)) / view.ballRadiusPx,
  };
}
