import type { PointPx } from '../raster/raster.ts';
import { moved, type Similarity } from '../stand/frame/similarity.ts';
import { type FilmAbsence, type FilmPhoto, sideOf } from './film-photo.ts';
import { type HeldBy, layInLine } from './lay-in-line.ts';

/** One picture of a film. */
export interface FilmFrame {
  readonly photo: FilmPhoto;
  /** Photo px to stage px. */
  readonly toStage: Similarity;
  readonly heldBy: HeldBy;
}

/** A film of one plant: one side, one camera place, oldest day first. */
export interface Film {
  readonly sideDeg: number;
  readonly place: string | null;
  readonly frames: readonly FilmFrame[];
  /** Photos of this side that do not come in, oldest first. */
  readonly absent: readonly { readonly photo: FilmPhoto; readonly absence: FilmAbsence }[];
  /** The part of the stage that all plants of the film need, px of the stage. */
  readonly window: FilmWindow;
}

export interface FilmWindow {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a film may show: a side, and where the camera stood; left out: the one with most photos. */
export interface FilmChoice {
  readonly sideDeg?: number;
  readonly place?: string | null;
}

/** Room around the plants, as a share of the window's longer side. */
const MARGIN = 0.06;
/** A window is no narrower and no wider than this, width ÷ height. */
const ASPECT = { least: 0.75, most: 1.4 } as const;

/**
 * Chooses the photos of a plant's film and lays them over each other.
 *
 * @param photos all photos of the plant, in any order
 * @param choice side and place; the side with most photos is taken when none is named, and of those the mark's
 * @returns the film; `null` when there is no photo of that side
 *
 * Example: ten weekly photos from one stand give ten frames; an eleventh from the kitchen table is absent as `other-place`.
 */
export function castFilm(photos: readonly FilmPhoto[], choice: FilmChoice = {}): Film | null {
  const sideDeg = choice.sideDeg ?? filmSides(photos)[0]?.sideDeg;
  if (sideDeg === undefined) return null;
  const ofSide = photos.filter((photo) => sideOf(photo) === sideDeg).sort(byDay);
  const place = choice.place === undefined ? filmPlaces(ofSide)[0]?.place : choice.place;
  if (place === undefined) return null;
  const absent: { photo: FilmPhoto; absence: FilmAbsence }[] = [];
  const here: FilmPhoto[] = [];
  for (const photo of ofSide) {
    if (photo.place !== place) absent.push({ photo, absence: 'other-place' });
    else if (photo.leftOut !== null) absent.push({ photo, absence: 'left-out' });
    else here.push(photo);
  }
  const frames: FilmFrame[] = [];
  for (const laid of layInLine(here, stageOf(here))) {
    if ('absence' in laid) absent.push(laid);
    else if (frames.at(-1)?.photo.day === laid.photo.day) {
      absent.push({ photo: laid.photo, absence: 'same-day' });
    } else frames.push(laid);
  }
  absent.sort((one, other) => byDay(one.photo, other.photo));
  return { sideDeg, place, frames, absent, window: windowOf(frames) };
}

/** The sides that the photos show, the one with most days first, then by degrees. */
export function filmSides(photos: readonly FilmPhoto[]): { sideDeg: number; days: number }[] {
  return daysBy(photos, sideOf)
    .map(([sideDeg, days]) => ({ sideDeg, days }))
    .sort((one, other) => other.days - one.days || one.sideDeg - other.sideDeg);
}

/** Where the camera stood, the place with most days first, then the one used last. */
export function filmPlaces(photos: readonly FilmPhoto[]): { place: string | null; days: number }[] {
  const newest = (place: string | null) =>
    photos
      .filter((photo) => photo.place === place)
      .sort(byDay)
      .at(-1)?.day ?? '';
  return daysBy(photos, ({ place }) => place)
    .map(([place, days]) => ({ place, days }))
    .sort((one, other) => other.days - one.days || (newest(one.place) < newest(other.place) ? 1 : -1));
}

function daysBy<Key>(photos: readonly FilmPhoto[], keyOf: (photo: FilmPhoto) => Key): [Key, number][] {
  const days = new Map<Key, Set<string>>();
  for (const photo of photos) {
    const key = keyOf(photo);
    days.set(key, (days.get(key) ?? new Set()).add(photo.day));
  }
  return [...days].map(([key, { size }]) => [key, size]);
}

function byDay(one: FilmPhoto, other: FilmPhoto): number {
  return one.day < other.day ? -1 : one.day > other.day ? 1 : 0;
}

/** The size that most photos have. */
function stageOf(photos: readonly FilmPhoto[]): { widthPx: number; heightPx: number } {
  const counts = new Map<string, { size: { widthPx: number; heightPx: number }; count: number }>();
  for (const { widthPx, heightPx } of photos) {
    const name = `${widthPx} × ${heightPx}`;
    const count = (counts.get(name)?.count ?? 0) + 1;
    counts.set(name, { size: { widthPx, heightPx }, count });
  }
  const most = [...counts.values()].sort((one, other) => other.count - one.count)[0];
  return most?.size ?? { widthPx: 0, heightPx: 0 };
}

/** Room for the plants of all frames, their pots' rims included; the whole first photo when none was measured. */
function windowOf(frames: readonly FilmFrame[]): FilmWindow {
  const points = frames.flatMap(({ photo, toStage }) =>
    extentOf(photo).map((point) => moved(toStage, point)),
  );
  const first = frames[0]?.photo;
  if (points.length === 0) return { x: 0, y: 0, width: first?.widthPx ?? 1, height: first?.heightPx ?? 1 };
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const room = MARGIN * Math.max(right - left, bottom - top);
  const [width, height] = [right - left + 2 * room, bottom - top + 3 * room];
  const wide = Math.max(width, height * ASPECT.least);
  const high = Math.max(height, width / ASPECT.most);
  return { x: (left + right - wide) / 2, y: top - room - (high - height) / 2, width: wide, height: high };
}

function extentOf({ outlinePx, report }: FilmPhoto): PointPx[] {
  const points: PointPx[] = [...outlinePx];
  if (report?.axis) points.push(report.axis.rimLeftPx, report.axis.rimRightPx);
  if (report?.ball) {
    const { centrePx, radiusPx } = report.ball;
    points.push([centrePx[0] - radiusPx, centrePx[1] - radiusPx], [centrePx[0] + radiusPx, centrePx[1]]);
  }
  return points;
}
