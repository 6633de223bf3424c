import type { Circle } from '../measures/circle.ts';
import { clockOf } from '../measures/clock.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import { type BareStem, bareSkeleton } from './bare-skeleton.ts';
import { circleOfTips } from './circle-of-tips.ts';
import type { LongStemPx } from './long-stems.ts';

/** What one photo of a bare plant tells. */
export interface BarePhoto {
  readonly stems: readonly LongStemPx[];
  /** The outline of the ball on which the tips end, long stems left out. */
  readonly crown: Circle;
  readonly all: readonly BareStem[];
  readonly notes: readonly string[];
}

/** A bare tip has no leaf to mistake for it, so less excess than in leaf is worth a knife, share of the radius. */
export const LEAST_BARE_EXCESS = 0.15;

/**
 * Long stems of a bare plant in one photo.
 *
 * @param mask canopy, px
 * @param place the plant axis and the rim plane, px; `null` without a pot
 * @param start a circle to begin with: the silhouette's ball
 * @returns stems, longest first; `null` when the plant is in leaf or shows too few tips
 *
 * Notes: lengths are as the photo shows them: a stem that points to or from the camera reads short. Several views tell (`matchStems`).
 */
export function bareLongStems(
  mask: Mask,
  place: { readonly xPx: number; readonly rimYPx: number } | null,
  start: Circle,
): BarePhoto | null {
  const skeleton = bareSkeleton(mask, place?.rimYPx ?? null);
  if (skeleton === null) return null;
  const { stems: all, loose } = skeleton;
  const crown = circleOfTips(
    all.map(({ tipPx }) => tipPx),
    { xPx: place?.xPx ?? start.centre[0], rimYPx: place?.rimYPx ?? null },
    start,
  );
  if (crown === null) return null;
  const stems = all
    .flatMap((stem) => longStem(stem, crown))
    .sort((one, other) => other.excessPx - one.excessPx);
  return { stems, crown, all, notes: bareNotes(all, loose) };
}

/** What cannot be seen on a bare plant, in words. */
export function bareNotes(all: readonly BareStem[], loose: number): string[] {
  const notes = [
    'The plant is bare, so stems are followed from tip to rim; where they cross, straight on. A tip that ends before or behind another stem is not seen.',
  ];
  const sharp = all.filter(({ bendsSharply }) => bendsSharply).length;
  if (sharp > 0) {
    notes.push(
      `${sharp === 1 ? 'One stem bends' : `${sharp} stems bend`} sharply where others cross: the lower part may be another stem’s, and the length with it.`,
    );
  }
  if (loose > 0) {
    notes.push(
      `${loose === 1 ? 'One piece hangs' : `${loose} pieces hang`} free in the outline: what joins ${loose === 1 ? 'it' : 'them'} to the plant was not seen.`,
    );
  }
  return notes;
}

function longStem({ tipPx, pathPx, lengthPx }: BareStem, { centre, radius }: Circle): LongStemPx[] {
  const [cx, cy] = centre;
  const excessPx = away(tipPx, cx, cy) - radius;
  if (excessPx < LEAST_BARE_EXCESS * radius) return [];
  const inside = pathPx.findIndex((place) => away(place, cx, cy) <= radius);
  const at = inside < 0 ? pathPx.length - 1 : inside;
  return [
    {
      tipPx,
      cutPx: pathPx[at] as PointPx,
      excessPx,
      clock: clockOf(Math.atan2(tipPx[1] - cy, tipPx[0] - cx)),
      kind: 'shoot',
      lengthPx,
    },
  ];
}

function away([x, y]: PointPx, cx: number, cy: number): number {
  return Math.hypot(x - cx, y - cy);
}
