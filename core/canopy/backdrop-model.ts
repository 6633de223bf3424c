import type { LabPicture } from '../raster/lab.ts';
import { type ColourSurface, fitSurfaces, surfaceAt } from './surface-fit.ts';
import { findTableLine, heightAbove, isAbove, type TableLine } from './table-line.ts';

/** The backdrop's colour as it would be seen at every pixel if the plant were not there. */
export interface Backdrop {
  readonly colour: LabPicture;
  /** Robust spread of the border about the model, ΔE (CIE 1976): noise, weave, what the model cannot follow. */
  readonly spread: number;
  /** Share of the border that the model explains, 0–1: below about 0.7 the place is busy, not plain. */
  readonly plainShare: number;
}

/** Border strip, share of the shorter side. */
const BORDER_SHARE = 0.04;
/** ΔE beyond which a border pixel counts as not explained. */
const EXPLAINED_DELTA = 7;

/**
 * Fits the backdrop as a smooth surface in L*, a* and b* (a full quadratic in x and y) to the strip along the
 * picture's border, robustly, so that a leaf, a table's edge or the pot reaching the border does not bend it.
 *
 * Where the border shows a line between a wall and a table or floor, each side gets its own surface.
 *
 * Works for a backdrop of any colour, near-black and white included, with uneven light. A second, local
 * correction for what a quadratic cannot follow is `followBackdrop`.
 */
export function fitBackdrop(picture: LabPicture): Backdrop {
  const places = borderPlaces(picture);
  const surface = fitSurfaces(picture, places);
  const whole = judged(picture, places, () => surface);
  const line = findTableLine(picture);
  if (line === null) return painted(picture, whole);
  const above = places.filter((i) => isAbove(line, picture, i));
  const below = places.filter((i) => !isAbove(line, picture, i));
  if (Math.min(above.length, below.length) < 40) return painted(picture, whole);
  const wall = fitSurfaces(picture, above);
  const table = fitSurfaces(picture, below);
  const parted = judged(picture, places, partedBy(picture, line, wall, table));
  return painted(picture, parted.misfit < PARTING_GAIN * whole.misfit ? parted : whole);
}

/** A parted backdrop must bring the border's mean misfit below this share of the undivided one's. */
const PARTING_GAIN = 0.8;

/** Which surface the backdrop follows at each pixel, and how well that explains the border. */
interface Fitted extends Omit<Backdrop, 'colour'> {
  readonly surfaceFor: (i: number) => ColourSurface;
  readonly misfit: number;
}

function judged(
  picture: LabPicture,
  places: readonly number[],
  surfaceFor: (i: number) => ColourSurface,
): Fitted {
  const residuals = places.map((i) => misfitAt(picture, surfaceFor(i), i));
  const explained = residuals.filter((delta) => delta < EXPLAINED_DELTA);
  explained.sort((one, other) => one - other);
  return {
    surfaceFor,
    spread: explained[Math.floor(explained.length / 2)] ?? EXPLAINED_DELTA,
    plainShare: explained.length / residuals.length,
    misfit: residuals.reduce((sum, delta) => sum + Math.min(15, delta), 0) / residuals.length,
  };
}

/** Either side of the line its own surface; right at the line whichever is nearer to what is seen. */
function partedBy(picture: LabPicture, line: TableLine, wall: ColourSurface, table: ColourSurface) {
  return (i: number): ColourSurface => {
    const off = heightAbove(line, picture, i);
    if (off > LINE_BLUR_PX) return wall;
    if (off < -LINE_BLUR_PX) return table;
    return misfitAt(picture, wall, i) < misfitAt(picture, table, i) ? wall : table;
  };
}

/** How far the line between wall and table may be off or blurred, px. */
const LINE_BLUR_PX = 5;

function misfitAt(picture: LabPicture, surface: ColourSurface, i: number): number {
  const l = (picture.l[i] as number) - surfaceAt(surface[0], picture, i);
  const a = (picture.a[i] as number) - surfaceAt(surface[1], picture, i);
  const b = (picture.b[i] as number) - surfaceAt(surface[2], picture, i);
  return Math.hypot(l, a, b);
}

function painted(picture: LabPicture, { surfaceFor, spread, plainShare }: Fitted): Backdrop {
  const { width, height } = picture;
  const count = width * height;
  const [l, a, b] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  for (let i = 0; i < count; i++) {
    const surface = surfaceFor(i);
    l[i] = surfaceAt(surface[0], picture, i);
    a[i] = surfaceAt(surface[1], picture, i);
    b[i] = surfaceAt(surface[2], picture, i);
  }
  return { colour: { width, height, l, a, b }, spread, plainShare };
}

/** ΔE (CIE 1976) between two pictures at pixel `i`. */
export function deltaAt(one: LabPicture, other: LabPicture, i: number): number {
  const l = (one.l[i] as number) - (other.l[i] as number);
  const a = (one.a[i] as number) - (other.a[i] as number);
  const b = (one.b[i] as number) - (other.b[i] as number);
  return Math.sqrt(l * l + a * a + b * b);
}

/** The backdrop in a window of the full raster; it is smooth, so the nearest pixel of the small copy will do. */
export function stretchBackdrop(
  small: LabPicture,
  full: { readonly width: number; readonly height: number },
  window: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
): LabPicture {
  const count = window.width * window.height;
  const [l, a, b] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  const columns = Int32Array.from({ length: window.width }, (_, x) =>
    Math.min(small.width - 1, Math.floor(((window.left + x + 0.5) * small.width) / full.width)),
  );
  for (let y = 0, i = 0; y < window.height; y++) {
    const row = Math.min(small.height - 1, Math.floor(((window.top + y + 0.5) * small.height) / full.height));
    for (let x = 0; x < window.width; x++, i++) {
      const from = row * small.width + (columns[x] as number);
      l[i] = small.l[from] as number;
      a[i] = small.a[from] as number;
      b[i] = small.b[from] as number;
    }
  }
  return { width: window.width, height: window.height, l, a, b };
}

/** Every third pixel of the strip along the border. */
function borderPlaces(picture: LabPicture): number[] {
  const { width, height } = picture;
  const strip = Math.max(3, Math.round(BORDER_SHARE * Math.min(width, height)));
  const places: number[] = [];
  for (let y = 0; y < height; y += 3) {
    for (let x = 0; x < width; x += 3) {
      const onBorder = x < strip || y < strip || x >= width - strip || y >= height - strip;
      if (onBorder) places.push(y * width + x);
    }
  }
  return places;
}
