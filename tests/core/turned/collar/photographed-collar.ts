import type { Raster } from '../../../../core/raster/raster.ts';
import { COLLAR_STEPS } from '../../../../core/turned/collar/collar-code.ts';
import { EDGE_MM, HOURS_MM, isUpperDark, ROW_SHARE } from '../../../../core/turned/collar/collar-geometry.ts';
import { seededChance, smoothNoise } from '../../../../sample-images/render/geometry/seeded-random.ts';
import { seeded } from '../../stand/sheet/photographed-sheet.ts';

/** A pot with its collar before a pinhole camera, drawn by following lines of sight: quick, and by other code than the sample renderer. */
export interface CollarPhotoScene {
  readonly rimMm: number;
  /** Azimuth that faces the camera. */
  readonly turnDeg: number;
  readonly pxPerMm: number;
  readonly distanceMm: number;
  /** Of the lens above the rim. */
  readonly heightMm: number;
  readonly rollDeg: number;
  /** None without. */
  readonly collar: StripOnPot | null;
  /** Linear light that pot, soil and wall give back. */
  readonly potColour: Colour;
  readonly wallColour: Colour;
  readonly exposure: number;
  /** Where the light comes from, degrees to the right of the camera, and how much comes from there. */
  readonly lightDeg: number;
  readonly lightShare: number;
  readonly blurPx: number;
  readonly noiseSteps: number;
  /** Leaves before the pot: how many, how low they hang ÷ rim, how large ÷ rim. */
  readonly leaves: { readonly count: number; readonly lowest: number; readonly size: number };
  readonly mirrored: boolean;
  readonly seed: number;
}

/** How the strip lies on the pot. */
export interface StripOnPot {
  readonly printedForMm: number;
  /** Of its upper edge. */
  readonly radiusMm: number;
  readonly dropMm: number;
  readonly taperDeg: number;
  /** How much its upper edge is lower at this azimuth than the mean, mm. */
  readonly sagMm: number;
  readonly sagAzimuthDeg: number;
  readonly upsideDown: boolean;
  readonly paper: number;
  readonly ink: number;
}

type Colour = readonly [number, number, number];

export const PLAIN_STRIP: StripOnPot = {
  printedForMm: 130,
  radiusMm: 65.3,
  dropMm: 2,
  taperDeg: 0,
  sagMm: 0,
  sagAzimuthDeg: 0,
  upsideDown: false,
  paper: 0.75,
  ink: 0.04,
};

export const PLAIN_SCENE: CollarPhotoScene = {
  rimMm: 130,
  turnDeg: 0,
  pxPerMm: 2.5,
  distanceMm: 1300,
  heightMm: 200,
  rollDeg: 0,
  collar: PLAIN_STRIP,
  potColour: [0.36, 0.15, 0.075],
  wallColour: [0.3, 0.31, 0.33],
  exposure: 1,
  lightDeg: -40,
  lightShare: 0.6,
  blurPx: 0.7,
  noiseSteps: 1.5,
  leaves: { count: 0, lowest: 0, size: 0.2 },
  mirrored: false,
  seed: 1,
};

export interface CollarPhoto {
  readonly raster: Raster;
  /** The rim as seen. */
  readonly rim: { readonly centrePx: readonly [number, number]; readonly halfWidthPx: number };
  /** Steps of the code within 65° of the camera that nothing hides. */
  readonly stepsSeen: number;
}

/** Samples a px along each side. */
const FINE = 2;
const PAPER_TINT: Colour = [1, 0.99, 0.96];
const SOIL: Colour = [0.05, 0.035, 0.025];

interface Leaf {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
  readonly slant: number;
  readonly colour: Colour;
  readonly seed: number;
}

/** Takes the photo: the pot's upper part, about two rims wide. */
export function photographCollar(changes: Partial<CollarPhotoScene>): CollarPhoto {
  const scene: CollarPhotoScene = { ...PLAIN_SCENE, ...changes };
  const { rimMm, pxPerMm } = scene;
  const width = Math.round(1.5 * rimMm * pxPerMm);
  const height = Math.round(1.1 * rimMm * pxPerMm);
  const centre: [number, number] = [width / 2, 0.38 * height];
  const leaves = leavesOf(scene, centre);
  const light = new Float32Array(3 * width * height);
  const turn = (scene.rollDeg * Math.PI) / 180;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      for (let fine = 0; fine < FINE * FINE; fine++) {
        const x = column + ((fine % FINE) + 0.5) / FINE;
        const y = row + (Math.floor(fine / FINE) + 0.5) / FINE;
        const colour = leafAt(leaves, x, y) ?? sceneAt(scene, centre, turn, x, y);
        for (let band = 0; band < 3; band++) {
          const at = 3 * (row * width + (scene.mirrored ? width - 1 - column : column)) + band;
          light[at] = (light[at] as number) + (scene.exposure * (colour[band] as number)) / (FINE * FINE);
        }
      }
    }
  }
  blur(light, width, height, scene.blurPx);
  const half = (rimMm / 2) * pxPerMm;
  const nearness = rimMm / 2 / scene.distanceMm;
  return {
    raster: { width, height, data: developed(light, scene) },
    rim: { centrePx: centre, halfWidthPx: half / Math.sqrt(1 - nearness ** 2) },
    stepsSeen: stepsSeen(scene, centre, turn, leaves),
  };
}

/** Px of a place of the scene: mm to the right, towards the camera, up from the rim. */
function placePx(
  { distanceMm, heightMm, pxPerMm }: CollarPhotoScene,
  [cx, cy]: readonly [number, number],
  turn: number,
  [right, near, up]: readonly [number, number, number],
): [number, number] {
  const focal = pxPerMm * distanceMm;
  const depth = distanceMm - near;
  const x = (focal * right) / depth;
  const y = focal * ((heightMm - up) / depth - heightMm / distanceMm);
  return [cx + x * Math.cos(turn) - y * Math.sin(turn), cy + x * Math.sin(turn) + y * Math.cos(turn)];
}

/** A line of sight from the lens: at depth t it is at right · t to the right and heightMm − down · t above the rim. */
interface Sight {
  right: number;
  down: number;
}
const SIGHT: Sight = { right: 0, down: 0 };

/** What a line of sight meets. A level camera: the rim's middle is at `centre`. */
function sceneAt(
  scene: CollarPhotoScene,
  centre: readonly [number, number],
  turn: number,
  xPx: number,
  yPx: number,
): Colour {
  const { rimMm, distanceMm, heightMm, pxPerMm, collar } = scene;
  const focal = pxPerMm * distanceMm;
  const [dx, dy] = [xPx - centre[0], yPx - centre[1]];
  SIGHT.right = (dx * Math.cos(turn) + dy * Math.sin(turn)) / focal;
  SIGHT.down = (-dx * Math.sin(turn) + dy * Math.cos(turn)) / focal + heightMm / distanceMm;
  if (collar !== null) {
    const t = coneDepth(scene, collar.radiusMm, Math.tan((collar.taperDeg * Math.PI) / 180), -collar.dropMm);
    if (t !== null) {
      const angle = (Math.atan2(SIGHT.right * t, distanceMm - t) * 180) / Math.PI;
      const azimuth = scene.turnDeg + angle;
      const sag = collar.sagMm * Math.cos(((azimuth - collar.sagAzimuthDeg) * Math.PI) / 180);
      const below = -collar.dropMm - sag - (heightMm - SIGHT.down * t);
      const share = stripAt(collar, azimuth, below);
      if (share !== null) return tinted(PAPER_TINT, share * lightAt(scene, t));
    }
  }
  const t = coneDepth(scene, rimMm / 2, 0.16, 0);
  const up = t === null ? 0 : heightMm - SIGHT.down * t;
  if (t !== null && up <= 0 && up > -rimMm) {
    return tinted(scene.potColour, lightAt(scene, t) * (up > -0.09 * rimMm ? 1 : 0.85));
  }
  // The opening: the level disc a little below the rim.
  const atSoil = (heightMm + 0.08 * rimMm) / Math.max(1e-9, SIGHT.down);
  if (Math.hypot(SIGHT.right * atSoil, atSoil - distanceMm) < 0.47 * rimMm) return SOIL;
  return scene.wallColour;
}

/** Depth at which the line meets a cone about the axis that is `radiusMm` wide at `topMm` and narrows downwards. */
function coneDepth(
  { distanceMm, heightMm }: CollarPhotoScene,
  radiusMm: number,
  taper: number,
  topMm: number,
): number | null {
  const { right, down } = SIGHT;
  const [a, b] = [radiusMm - taper * (topMm - heightMm), -taper * down];
  const square = right * right + 1 - b * b;
  const half = -distanceMm - a * b;
  const root = half * half - square * (distanceMm * distanceMm - a * a);
  return root <= 0 ? null : (-half - Math.sqrt(root)) / square;
}

function lightAt({ distanceMm, lightDeg, lightShare }: CollarPhotoScene, t: number): number {
  const angle = Math.atan2(SIGHT.right * t, distanceMm - t) - (lightDeg * Math.PI) / 180;
  return 1 - lightShare + lightShare * Math.max(0, Math.cos(angle)) * 1.4;
}

function tinted(colour: Colour, light: number): Colour {
  return [colour[0] * light, colour[1] * light, colour[2] * light];
}

/** Light of the strip at an azimuth and so far below its upper edge; `null` off the strip. */
function stripAt(collar: StripOnPot, azimuthDeg: number, belowMm: number): number | null {
  const { printedForMm, radiusMm } = collar;
  const rowMm = ROW_SHARE * printedForMm;
  const heightMm = EDGE_MM + 2 * rowMm + HOURS_MM;
  if (belowMm < 0 || belowMm > heightMm) return null;
  const wrapped = ((((azimuthDeg + 180) % 360) + 360) % 360) - 180;
  const asPrinted = (wrapped * radiusMm) / (printedForMm / 2);
  if (Math.abs(asPrinted) > 180) return null;
  const printed = collar.upsideDown ? -asPrinted : asPrinted;
  const below = collar.upsideDown ? heightMm - belowMm : belowMm;
  if (below < EDGE_MM) return collar.paper;
  if (below < EDGE_MM + rowMm) return isUpperDark(printed) ? collar.ink : collar.paper;
  if (below < EDGE_MM + 2 * rowMm) return isUpperDark(printed) ? collar.paper : collar.ink;
  const fromTick = Math.abs(((((printed + 15) % 30) + 30) % 30) - 15);
  return fromTick < 1.2 && below > heightMm - 4.5 && below < heightMm - 1.5 ? collar.ink : collar.paper;
}

function leavesOf(scene: CollarPhotoScene, [cx, cy]: readonly [number, number]): Leaf[] {
  const chance = seededChance(scene.seed * 71 + 3);
  const rimPx = scene.rimMm * scene.pxPerMm;
  return Array.from({ length: scene.leaves.count }, (_, k): Leaf => {
    const tone = chance.between(0.35, 1.6, 1, k);
    const size = rimPx * scene.leaves.size * chance.between(0.5, 1.2, 2, k);
    return {
      x: cx + rimPx * chance.between(-0.75, 0.75, 3, k),
      y: cy + rimPx * chance.between(-0.4, scene.leaves.lowest, 4, k),
      wide: size / 2,
      high: (size / 2) * chance.between(0.6, 1, 5, k),
      slant: chance.between(0, 3.1, 6, k),
      colour: [0.07 * tone, 0.14 * tone, 0.03 * tone],
      seed: scene.seed + k,
    };
  });
}

function leafAt(leaves: readonly Leaf[], x: number, y: number): Colour | null {
  for (const leaf of leaves) {
    const [dx, dy] = [x - leaf.x, y - leaf.y];
    if (dx * dx + dy * dy > 1.3 * leaf.wide * leaf.wide) continue;
    const along = (dx * Math.cos(leaf.slant) + dy * Math.sin(leaf.slant)) / leaf.wide;
    const across = (-dx * Math.sin(leaf.slant) + dy * Math.cos(leaf.slant)) / leaf.high;
    const wave = 1 + 0.1 * Math.sin(7 * Math.atan2(across, along) + leaf.seed);
    if (Math.hypot(along, across) > wave) continue;
    const shade =
      1 +
      0.35 * smoothNoise(x / 9, y / 9, leaf.seed) +
      0.35 * across +
      0.25 * smoothNoise(x / 3, y / 3, leaf.seed);
    return [leaf.colour[0] * shade, leaf.colour[1] * shade, leaf.colour[2] * shade];
  }
  return null;
}

function stepsSeen(
  scene: CollarPhotoScene,
  centre: readonly [number, number],
  turn: number,
  leaves: readonly Leaf[],
): number {
  const { collar } = scene;
  if (collar === null) return 0;
  const rowMm = ROW_SHARE * collar.printedForMm;
  let seen = 0;
  for (let angle = -65; angle <= 65; angle++) {
    const rad = (angle * Math.PI) / 180;
    const both = [-rowMm / 2, rowMm / 2].every((from) => {
      const place = [
        collar.radiusMm * Math.sin(rad),
        collar.radiusMm * Math.cos(rad),
        -collar.dropMm - EDGE_MM - rowMm - from,
      ] as const;
      return leafAt(leaves, ...placePx(scene, centre, turn, place)) === null;
    });
    if (both) seen++;
  }
  return seen / (360 / COLLAR_STEPS);
}

/** Separable Gaussian; the border repeats its last pixel. */
function blur(light: Float32Array, width: number, height: number, blurPx: number): void {
  if (blurPx <= 0) return;
  const reach = Math.ceil(3 * blurPx);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * blurPx ** 2)),
  );
  const total = weights.reduce((sum, one) => sum + one, 0);
  for (const across of [true, false]) {
    const from = light.slice();
    for (let row = 0; row < height; row++) {
      for (let column = 0; column < width; column++) {
        for (let band = 0; band < 3; band++) {
          let sum = 0;
          for (let k = -reach; k <= reach; k++) {
            const c = across ? Math.min(width - 1, Math.max(0, column + k)) : column;
            const r = across ? row : Math.min(height - 1, Math.max(0, row + k));
            sum += (weights[k + reach] as number) * (from[3 * (r * width + c) + band] as number);
          }
          light[3 * (row * width + column) + band] = sum / total;
        }
      }
    }
  }
}

function developed(light: Float32Array, { noiseSteps, seed }: CollarPhotoScene): Uint8Array {
  const random = seeded(seed);
  let shared = 0;
  return Uint8Array.from(light, (share, at) => {
    const held = Math.max(0, share);
    const step = 255 * (held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055);
    // Noise is mostly of brightness: one value a px, and a little of each colour. Three even numbers make a nearly normal one.
    if (at % 3 === 0) shared = 2 * (random() + random() + random() - 1.5);
    const noise = noiseSteps * (0.8 * shared + 1.2 * (random() + random() + random() - 1.5));
    return Math.min(255, Math.max(0, Math.round(step + noise)));
  });
}
