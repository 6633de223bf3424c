import type { Mask, Raster } from '../../../core/raster/raster.ts';

/** An sRGB colour, 0–255. */
export type Colour = readonly [red: number, green: number, blue: number];

/** A small picture of a bushy pot plant, painted from discs and a trapezoid, with its own truth. */
export interface PaintedPlant {
  readonly raster: Raster;
  /** The same stand without the plant and pot. */
  readonly empty: Raster;
  readonly canopy: Mask;
  readonly rimLeftX: number;
  readonly rimRightX: number;
  readonly rimY: number;
}

export interface Painting {
  readonly width: number;
  readonly height: number;
  readonly backdrop: (x: number, y: number) => Colour;
  readonly pot: Colour;
  readonly leaf: Colour;
  /** Middle of the ball, px; the pot stands below it. */
  readonly centreX: number;
  readonly radius: number;
  /** A cast shadow on the floor at the right of the pot. */
  readonly shadow: boolean;
  /** A round gap through the canopy, `null` for none. */
  readonly gap: { readonly x: number; readonly y: number; readonly radius: number } | null;
}

export const PAINTING: Painting = {
  width: 360,
  height: 440,
  backdrop: () => [225, 224, 220],
  pot: [175, 95, 65],
  leaf: [80, 125, 55],
  centreX: 180,
  radius: 105,
  shadow: true,
  gap: null,
};

const SAMPLES = 2;

/** Paints the plant; every pixel is the mean of four samples, so edges are as soft as a sharp camera's. */
export function paintPlant(changes: Partial<Painting> = {}): PaintedPlant {
  const painting = { ...PAINTING, ...changes };
  const { width, height, centreX, radius } = painting;
  const ballY = 40 + radius;
  const rimY = ballY + 0.9 * radius;
  const rimHalf = 0.5 * radius;
  const pot = { rimY, rimHalf, footY: Math.min(height - 25, rimY + 1.3 * rimHalf), footHalf: 0.7 * rimHalf };
  const leaves = paintedLeaves(painting, ballY);
  const data = new Uint8Array(3 * width * height);
  const empty = new Uint8Array(3 * width * height);
  const canopy = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const sum = [0, 0, 0];
      let covered = 0;
      for (let k = 0; k < SAMPLES * SAMPLES; k++) {
        const sx = x + ((k % SAMPLES) + 0.5) / SAMPLES;
        const sy = y + (Math.floor(k / SAMPLES) + 0.5) / SAMPLES;
        const leaf = leafAt(painting, leaves, sx, sy);
        if (leaf !== null) covered++;
        const colour = leaf ?? potAt(painting, pot, sx, sy) ?? shadedBackdrop(painting, pot, sx, sy);
        for (let c = 0; c < 3; c++) sum[c] = (sum[c] as number) + (colour[c] as number);
      }
      const i = y * width + x;
      const bare = painting.backdrop(x + 0.5, y + 0.5);
      const noise = 3 * (scatter(x, y) - 0.5);
      for (let c = 0; c < 3; c++) {
        data[3 * i + c] = byte((sum[c] as number) / SAMPLES ** 2 + noise);
        empty[3 * i + c] = byte((bare[c] as number) + 3 * (scatter(y, x) - 0.5));
      }
      canopy[i] = covered >= (SAMPLES * SAMPLES) / 2 ? 1 : 0;
    }
  }
  return {
    raster: { width, height, data },
    empty: { width, height, data: empty },
    canopy: { width, height, data: canopy },
    rimLeftX: centreX - rimHalf,
    rimRightX: centreX + rimHalf,
    rimY,
  };
}

interface Leaf {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly light: number;
}

/** Leaves over a ball, placed by the golden angle, each with its own light. */
function paintedLeaves({ centreX, radius }: Painting, ballY: number): Leaf[] {
  return Array.from({ length: 90 }, (_, k) => {
    const out = (radius - 14) * Math.sqrt((k + 0.5) / 90);
    const angle = k * 2.39996;
    return {
      x: centreX + out * Math.cos(angle),
      y: ballY + out * Math.sin(angle),
      radius: 15 + 5 * scatter(k, 7),
      light: 0.7 + 0.6 * scatter(k, 3),
    };
  });
}

function leafAt({ leaf, gap }: Painting, leaves: readonly Leaf[], x: number, y: number): Colour | null {
  if (gap !== null && Math.hypot(x - gap.x, y - gap.y) < gap.radius) return null;
  for (const one of leaves) {
    const dx = x - one.x;
    const dy = y - one.y;
    const squared = dx * dx + dy * dy;
    if (squared < one.radius * one.radius) {
      const light = one.light * (1 - (0.35 * Math.sqrt(squared)) / one.radius);
      return [leaf[0] * light, leaf[1] * light, leaf[2] * light];
    }
  }
  return null;
}

interface PaintedPot {
  readonly rimY: number;
  readonly rimHalf: number;
  readonly footY: number;
  readonly footHalf: number;
}

function potAt({ pot, centreX }: Painting, shape: PaintedPot, x: number, y: number): Colour | null {
  const opening = 0.18 * shape.rimHalf;
  const soil = ((x - centreX) / shape.rimHalf) ** 2 + ((y - shape.rimY) / opening) ** 2;
  if (soil < 0.85) return [60, 48, 40];
  const down = (y - shape.rimY) / (shape.footY - shape.rimY);
  const half = shape.rimHalf + (shape.footHalf - shape.rimHalf) * Math.max(0, down);
  const inBody = down >= 0 && down <= 1 && Math.abs(x - centreX) < half;
  if (soil >= 1 && !inBody) return null;
  // Lit from the left, as a round body is.
  const light = 1.1 - 0.35 * Math.abs((x - centreX) / half + 0.3);
  return [pot[0] * light, pot[1] * light, pot[2] * light];
}

function shadedBackdrop(painting: Painting, pot: PaintedPot, x: number, y: number): Colour {
  const colour = painting.backdrop(x, y);
  if (!painting.shadow) return colour;
  const away =
    ((x - painting.centreX - pot.rimHalf) / (1.6 * pot.rimHalf)) ** 2 + ((y - pot.footY) / 14) ** 2;
  const light = 1 - 0.35 * Math.exp(-away);
  return [colour[0] * light, colour[1] * light, colour[2] * light];
}

/** A repeatable number 0–1 for two whole numbers. */
function scatter(one: number, other: number): number {
  const value = Math.sin(one * 127.1 + other * 311.7) * 43758.5453;
  return value - Math.floor(value);
}

/** A garden behind: patches of many colours, greens among them. */
export function busyGarden(x: number, y: number): Colour {
  const [column, row] = [Math.floor(x / 23), Math.floor(y / 19)];
  const pick = scatter(column, row);
  const light = 0.6 + 0.7 * scatter(row, column);
  const base: Colour =
    pick < 0.3
      ? [95, 130, 80]
      : pick < 0.55
        ? [150, 120, 95]
        : pick < 0.75
          ? [120, 140, 170]
          : [200, 190, 180];
  return [base[0] * light, base[1] * light, base[2] * light];
}

const byte = (value: number): number => Math.max(0, Math.min(255, Math.round(value)));

/** Every byte through a function. */
export function recolour(raster: Raster, change: (value: number) => number): Raster {
  return { ...raster, data: raster.data.map((value) => byte(change(value))) };
}

/** Intersection over union of two masks. */
export function overlap(one: Mask, other: Mask): number {
  let [both, either] = [0, 0];
  for (let i = 0; i < one.data.length; i++) {
    both += (one.data[i] as number) & (other.data[i] as number);
    either += (one.data[i] as number) | (other.data[i] as number);
  }
  return both / either;
}
