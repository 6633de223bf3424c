import { smoothStep } from '../geometry/keyframes.ts';
import type { Part } from '../geometry/mesh.ts';
import { smoothNoise } from '../geometry/seeded-random.ts';
import { BROWN } from '../plant/ailing-leaves.ts';
import { leafPattern, SPAN } from './leaf-pattern.ts';

/** What a surface does with light at one place; filled in anew for each place to spare memory. */
export interface Surface {
  /** Linear reflectance. */
  red: number;
  green: number;
  blue: number;
  /** Light that comes through from behind, as a share of that falling there. */
  throughRed: number;
  throughGreen: number;
  throughBlue: number;
  /** Strength of the shine at a right angle, and its narrowness (Blinn-Phong exponent). */
  shine: number;
  narrowness: number;
  /** Slope of the surface along its first two pattern coordinates. */
  slopeX: number;
  slopeY: number;
}

export function blankSurface(): Surface {
  return {
    red: 0,
    green: 0,
    blue: 0,
    throughRed: 0,
    throughGreen: 0,
    throughBlue: 0,
    shine: 0,
    narrowness: 10,
    slopeX: 0,
    slopeY: 0,
  };
}

/** Fills `surface` for a place on a part; `front` tells the upper side of a leaf or petal from the lower. */
export function paintSurface(
  surface: Surface,
  part: Part,
  x: number,
  y: number,
  z: number,
  front: boolean,
): void {
  surface.red = part.colour[0];
  surface.green = part.colour[1];
  surface.blue = part.colour[2];
  surface.throughRed = surface.throughGreen = surface.throughBlue = 0;
  surface.shine = 0.02;
  surface.narrowness = 12;
  surface.slopeX = surface.slopeY = 0;
  switch (part.material) {
    case 'leaf':
      paintLeaf(surface, part, x, y, z, front);
      break;
    case 'petal':
      paintPetal(surface, part, x, y);
      break;
    case 'bud':
      paintBud(surface, part, y);
      break;
    case 'stem':
      tone(surface, 1 + 0.18 * smoothNoise(x * 9, y * 40, part.seed));
      break;
    case 'clay':
    case 'plastic':
      paintPot(surface, part, x, y, z);
      break;
    case 'soil':
      paintSoil(surface, part, x, y);
      break;
    case 'mark':
    case 'pale':
      break;
    case 'label':
      paintLabel(surface, part, x, y);
      break;
  }
}

function tone(surface: Surface, factor: number): void {
  surface.red *= factor;
  surface.green *= factor;
  surface.blue *= factor;
}

function toward(surface: Surface, red: number, green: number, blue: number, share: number): void {
  surface.red += (red - surface.red) * share;
  surface.green += (green - surface.green) * share;
  surface.blue += (blue - surface.blue) * share;
}

function paintLeaf(surface: Surface, part: Part, x: number, y: number, rho: number, front: boolean): void {
  const pattern = leafPattern();
  const last = pattern.size - 2;
  const column = Math.min(last, Math.max(1, Math.floor(((x + SPAN) / (2 * SPAN)) * pattern.size)));
  const row = Math.min(last, Math.max(1, Math.floor(((y + SPAN) / (2 * SPAN)) * pattern.size)));
  const at = row * pattern.size + column;
  const cell = (2 * SPAN) / pattern.size;
  const sign = front ? 1 : -1;
  const { height } = pattern;
  surface.slopeX = (sign * ((height[at + 1] as number) - (height[at - 1] as number))) / (2 * cell);
  surface.slopeY =
    (sign * ((height[at + pattern.size] as number) - (height[at - pattern.size] as number))) / (2 * cell);
  const vein = pattern.vein[at] as number;

  const blotchy =
    smoothNoise(x * 2.3 + 9, y * 2.3, part.seed) + 0.5 * smoothNoise(x * 7, y * 7, part.seed + 1);
  tone(surface, 1 + 0.1 * blotchy);
  const zone = part.pattern[0] as number;
  if (zone > 0 && front) {
    const middle = 0.58 + 0.05 * smoothNoise(x * 3, y * 3, part.seed + 2);
    const ring = smoothStep(0.2, 0.05, Math.abs(rho - middle));
    toward(surface, 0.055, 0.04, 0.018, 0.75 * zone * ring);
  }
  const [, , brownEdge = 0, yellow = 0] = part.pattern;
  const dead = brownEdge > 0 ? smoothStep(-0.02, 0.02, rho - 1 + brownEdge) : 0;
  if (dead > 0) toward(surface, BROWN[0], BROWN[1], BROWN[2], dead);
  // What has lost its green has lost it in the veins and on the underside too.
  const alive = 1 - Math.max(yellow, dead);
  const reddish = smoothStep(0.965, 1, rho) * 0.12;
  toward(surface, 0.19, 0.24, 0.09, alive * ((front ? 0.26 : 0.45) * vein + reddish));
  surface.throughRed = surface.red * 1.25;
  surface.throughGreen = surface.green * 1.3;
  surface.throughBlue = surface.blue * 0.5;
  const through = 0.62 * (1 - 0.45 * vein);
  surface.throughRed *= through;
  surface.throughGreen *= through;
  surface.throughBlue *= through;
  if (front) {
    surface.shine = 0.034;
    surface.narrowness = 18;
  } else {
    toward(surface, 0.2, 0.27, 0.14, 0.45 * alive);
    surface.shine = 0.012;
    surface.narrowness = 6;
  }
}

function paintPetal(surface: Surface, part: Part, s: number, t: number): void {
  const [strength, red, green, blue] = part.pattern as [number, number, number, number];
  const streaks = 0.5 + 0.5 * Math.cos(s * 26 + 3 * smoothNoise(s * 3, t * 3, part.seed));
  const spot = smoothStep(
    0.36,
    0.12,
    Math.hypot(s * 0.42, t - 0.52 + 0.04 * smoothNoise(s * 5, t * 5, part.seed)),
  );
  const feather = smoothStep(0.85, 0.3, t) * streaks * smoothStep(1, 0.4, Math.abs(s)) * 0.6;
  toward(surface, red, green, blue, Math.min(0.95, strength * Math.max(spot, feather)));
  toward(surface, 0.75, 0.66, 0.66, 0.55 * smoothStep(0.2, 0.02, t));
  toward(surface, 0.8, 0.7, 0.72, 0.12 * smoothStep(0.86, 1, t));
  tone(surface, 1 - 0.1 * streaks * (1 - t));
  surface.throughRed = surface.red * 0.55;
  surface.throughGreen = surface.green * 0.45;
  surface.throughBlue = surface.blue * 0.45;
  surface.shine = 0.012;
  surface.narrowness = 8;
  surface.slopeX = 0.05 * Math.sin(s * 26);
}

function paintBud(surface: Surface, part: Part, share: number): void {
  const coloured = part.pattern[0] as number;
  toward(surface, 0.13, 0.24, 0.06, 1 - coloured * smoothStep(0.3, 0.62, share));
}

function paintPot(
  surface: Surface,
  part: Part,
  azimuthDeg: number,
  heightMm: number,
  radiusMm: number,
): void {
  const [dot, rimMm] = part.pattern as [number, number];
  const { seed } = part;
  if (part.material === 'clay') {
    const patches =
      roundNoise(azimuthDeg, 28, heightMm / 26, seed) +
      0.5 * roundNoise(azimuthDeg, 84, heightMm / 9, seed + 2);
    const grain = roundNoise(azimuthDeg, 750, heightMm * 1.5, seed + 1);
    tone(surface, 1 + 0.07 * patches + 0.05 * grain);
    const lime = smoothStep(0.1, 1.1, patches + 0.4 * grain - heightMm * 0.004 - 0.35);
    toward(surface, 0.5, 0.43, 0.36, 0.4 * lime);
    surface.shine = 0.008;
    surface.narrowness = 4;
  } else {
    tone(surface, 1 + 0.04 * roundNoise(azimuthDeg, 21, heightMm / 14, seed));
    const dusty = smoothStep(-0.2, 1, roundNoise(azimuthDeg, 50, heightMm / 30, seed + 4));
    toward(surface, 0.2, 0.18, 0.15, 0.05 * dusty);
    surface.shine = 0.045;
    surface.narrowness = 26;
  }
  if (dot > 0 && radiusMm > rimMm / 2 - 2.4) {
    const fromMark = ((((azimuthDeg + 180) % 360) - 180) * Math.PI * radiusMm) / 180;
    const paint = smoothStep(4.4, 3.8, Math.hypot(fromMark, heightMm + 6.2));
    toward(surface, 0.8, 0.79, 0.74, paint);
  }
}

/** Smooth noise on a pot's wall, `cells` of it round the pot, without a seam where the azimuth starts anew. */
function roundNoise(azimuthDeg: number, cells: number, height: number, seed: number): number {
  const around = (azimuthDeg / 360) * cells;
  const share = smoothStep(330, 360, azimuthDeg);
  const here = smoothNoise(around, height, seed);
  return share === 0 ? here : here * (1 - share) + smoothNoise(around - cells, height, seed) * share;
}

function paintSoil(surface: Surface, part: Part, x: number, y: number): void {
  const crumbs =
    smoothNoise(x / 2.2, y / 2.2, part.seed) + 0.7 * smoothNoise(x / 0.9, y / 0.9, part.seed + 1);
  tone(surface, 1 + 0.45 * crumbs);
  const grit = smoothStep(0.72, 0.85, smoothNoise(x / 2.6, y / 2.6, part.seed + 2));
  toward(surface, 0.42, 0.4, 0.36, 0.8 * grit);
  surface.shine = 0.004;
}

/** Pencil marks that suggest writing without being any. */
function paintLabel(surface: Surface, part: Part, x: number, y: number): void {
  const line = Math.floor(y * 16);
  const inLine = y * 16 - line;
  if (line < 8 || line > 13 || line % 2 === 0) return;
  const stroke = Math.abs(inLine - 0.5 - 0.3 * smoothNoise(x * 14, line, part.seed));
  if (Math.abs(x) < 0.36 && stroke < 0.11) toward(surface, 0.12, 0.12, 0.14, 0.7);
}
