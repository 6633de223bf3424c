import type { SolidScene, Tone } from './solid-scene.ts';
import { LIGHT, type Shades } from './solid-shades.ts';
import { crossOf } from './surface-normals.ts';
import { type Direction, dot, eyeAxes, type Turning } from './turning.ts';

/** A triangle as it is painted. */
export interface PaintedFace {
  /** x right, y down of its three corners, in the picture's px. */
  readonly corners: readonly [number, number, number, number, number, number];
  readonly depth: number;
  readonly tone: Tone;
  /** 0 to 1. */
  readonly light: number;
}

/**
 * The faces that look at the eye, the farthest first, for a painter without a depth buffer.
 *
 * @param sidePx of the square picture
 * @param lamp direction towards the lamp, length 1
 */
export function paintedFaces(
  scene: SolidScene,
  { turning, sidePx, lamp }: { turning: Turning; sidePx: number; lamp: Direction },
): PaintedFace[] {
  const axes = eyeAxes(turning);
  const pxPerUnit = sidePx / (2 * scene.reach);
  const { corners, triangles, tones, normals, middle } = scene;
  const count = corners.length / 3;
  const [xs, ys, depths] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  const at = (corner: number): Direction => [
    (corners[3 * corner] as number) - middle[0],
    (corners[3 * corner + 1] as number) - middle[1],
    (corners[3 * corner + 2] as number) - middle[2],
  ];
  for (let k = 0; k < count; k++) {
    const point = at(k);
    xs[k] = sidePx / 2 + pxPerUnit * dot(point, axes.right);
    ys[k] = sidePx / 2 - pxPerUnit * dot(point, axes.up);
    depths[k] = dot(point, axes.near);
  }
  const faces: PaintedFace[] = [];
  for (let t = 0; t + 2 < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number];
    if (dot(crossOf(at(a), at(b), at(c)), axes.near) <= 0) continue;
    faces.push({
      corners: [xs[a], ys[a], xs[b], ys[b], xs[c], ys[c]] as unknown as PaintedFace['corners'],
      depth: ((depths[a] as number) + (depths[b] as number) + (depths[c] as number)) / 3,
      tone: tones[a] as Tone,
      light: lightOn([a, b, c], normals, lamp),
    });
  }
  return faces.sort((one, other) => one.depth - other.depth);
}

/** Light on a face by its corners' mean normal, which hides the grid that the hull was cut from; as bright as a screen shows it. */
function lightOn(face: readonly number[], normals: Float32Array, lamp: Direction): number {
  const facing = face.reduce((sum, corner) => {
    const [u, v, h] = normals.subarray(3 * corner, 3 * corner + 3) as unknown as Direction;
    return sum + dot([u, v, h], lamp) / face.length;
  }, 0);
  return (LIGHT.around + LIGHT.lamp * Math.max(0, facing)) ** (1 / SCREEN_GAMMA);
}

/** Half the light looks brighter than half of white. */
const SCREEN_GAMMA = 2.2;

/** Paints the faces; a hairline of the same colour closes the seams between them. */
export function paintFaces(canvas: HTMLCanvasElement, faces: readonly PaintedFace[], shades: Shades): void {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.lineWidth = 1;
  pen.lineJoin = 'round';
  for (const { corners, tone, light } of faces) {
    const [ax, ay, bx, by, cx, cy] = corners;
    pen.fillStyle = dimmed(shades[tone], light);
    pen.strokeStyle = pen.fillStyle;
    pen.beginPath();
    pen.moveTo(ax, ay);
    pen.lineTo(bx, by);
    pen.lineTo(cx, cy);
    pen.closePath();
    pen.fill();
    pen.stroke();
  }
}

/** "#rrggbb" less bright: 1 leaves it as it is, 0 is black. */
export function dimmed(hex: string, light: number): string {
  const part = (at: number) => Math.round(Number.parseInt(hex.slice(at, at + 2), 16) * Math.min(light, 1));
  return `rgb(${part(1)} ${part(3)} ${part(5)})`;
}
