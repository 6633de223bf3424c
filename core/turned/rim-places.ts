import { mean, median } from 'simple-statistics';
import type { Mask, PointPx } from '../raster/raster.ts';
import type { PhotoReport } from '../report.ts';
import { readSilhouette } from '../silhouette/silhouette.ts';
import { inverseOf, moved, type Similarity, similarityAbout } from '../stand/frame/similarity.ts';
import { DIRECTIONS_FOR_AXIS, distinctDirections } from './lopsidedness-vector.ts';
import type { TakenView } from './taken-view.ts';
import type { AxisSource } from './turned-view.ts';

/** Where the pot's rim stands on one photo of a sitting, and how that is known. Px of the photo. */
export interface RimPlace {
  readonly middlePx: PointPx;
  /** `null` when no view of the sitting shows a rim. */
  readonly halfWidthPx: number | null;
  /** Millimetres a px there; `null` when unknown. */
  readonly mmPerPx: number | null;
  /** Doubt of the middle that the photo's own plus-minus does not hold: one standard deviation. */
  readonly doubtPx: number;
  readonly axisFrom: AxisSource;
}

/** How far a pot is set down beside its place by hand, one standard deviation as a share of the rim's width. Our own choice: 4 mm on 13 cm. */
const SET_DOWN_SHARE = 0.03;

/**
 * Places the rim on every photo of a sitting, also on those that do not show it.
 *
 * @param views as taken, from one camera place
 * @returns a place for each view; `null` where it was not cut out or its rim cannot be placed
 *
 * How: a view's own rim; else the rim of the views that show one, because the camera stands still and the pot turns in its place. Where most
 * views show no rim (leaves hide it, or a dark pot stands before a dark cloth) the few that do are not to be trusted: from three directions
 * on all views are then placed by their canopies, and the axis is left for the fit of their middles to find. Heights then count from the lowest leaf.
 */
export function rimPlaces(views: readonly TakenView[]): (RimPlace | null)[] {
  const usable = views.filter(isCutOut);
  const own = usable.filter(({ report }) => report.axis !== null);
  const directions = distinctDirections(usable.flatMap(({ report }) => report.turnDeg ?? []));
  if (2 * own.length < usable.length && directions >= DIRECTIONS_FOR_AXIS)
    return placesByMiddles(views, usable);
  const reports = own.map(({ report }) => report);
  const shared = own.length === 0 ? null : sharedRim(reports);
  const isStill = shared !== null && standsTogether(reports, shared);
  return views.map((view) => {
    if (!isCutOut(view)) return null;
    const rim = ownRim(view.report);
    if (rim === null) return shared === null ? null : borrowed(shared, view.report);
    const steady = isStill ? steadied(rim, carried(shared, photoFromStand(view.report))) : rim;
    return { ...steady, doubtPx: 0, axisFrom: 'rim' };
  });
}

/** A rim stands where the others do when it is no farther aside or up than this, share of the rim's width: 8 mm on 13 cm. */
const TOGETHER_SHARE = 0.06;
/** And is no wider or narrower than by this share. */
const AS_WIDE_SHARE = 0.06;

/** Whether more than half of the rims stand in one place and are as wide: then the camera stood still and the pot was turned in its place. */
function standsTogether(reports: readonly PhotoReport[], shared: Rim): boolean {
  const near = reports.filter((report) => {
    const rim = carried(ownRim(report) as Rim, inverseOf(photoFromStand(report)));
    const apart = Math.hypot(rim.middlePx[0] - shared.middlePx[0], rim.middlePx[1] - shared.middlePx[1]);
    const widthPx = 2 * shared.halfWidthPx;
    return (
      apart < TOGETHER_SHARE * widthPx && Math.abs(rim.halfWidthPx / shared.halfWidthPx - 1) < AS_WIDE_SHARE
    );
  });
  return 2 * near.length > reports.length;
}

/**
 * A view's own rim with the size, scale and height that the rim has in most views: leaves hide its ends now here, now there, by more than a pot
 * turned in its place comes nearer or goes farther. Where it stands sideways is its own, because the plant goes along.
 */
function steadied(own: Rim, usual: Rim): Rim {
  return { ...usual, middlePx: [own.middlePx[0], usual.middlePx[1]] };
}

/** A measured view with its canopy. */
export type CutOut = TakenView & { readonly canopy: Mask };

/** Whether a view can be joined with others. */
export function isCutOut(view: TakenView): view is CutOut {
  return view.canopy !== null && view.report.status === 'measured' && view.report.widthPx !== null;
}

interface Rim {
  readonly middlePx: PointPx;
  readonly halfWidthPx: number;
  readonly mmPerPx: number | null;
}

function ownRim({ axis, scale }: PhotoReport): Rim | null {
  if (axis === null) return null;
  const [left, right] = [axis.rimLeftPx, axis.rimRightPx];
  return {
    middlePx: [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2],
    halfWidthPx: Math.hypot(right[0] - left[0], right[1] - left[1]) / 2,
    mmPerPx: scale?.mmPerPx ?? null,
  };
}

/** The usual rim of the views that show one, on the stand's picture. */
function sharedRim(reports: readonly PhotoReport[]): Rim {
  const rims = reports.flatMap((report) => {
    const rim = ownRim(report);
    return rim === null ? [] : [carried(rim, inverseOf(photoFromStand(report)))];
  });
  const scales = rims.flatMap(({ mmPerPx }) => mmPerPx ?? []);
  return {
    middlePx: [
      median(rims.map(({ middlePx }) => middlePx[0])),
      median(rims.map(({ middlePx }) => middlePx[1])),
    ],
    halfWidthPx: median(rims.map(({ halfWidthPx }) => halfWidthPx)),
    mmPerPx: scales.length === 0 ? null : median(scales),
  };
}

function borrowed(shared: Rim, report: PhotoReport): RimPlace {
  const rim = carried(shared, photoFromStand(report));
  return {
    ...rim,
    mmPerPx: report.scale?.mmPerPx ?? rim.mmPerPx,
    doubtPx: SET_DOWN_SHARE * 2 * rim.halfWidthPx,
    axisFrom: 'other-views',
  };
}

function carried({ middlePx, halfWidthPx, mmPerPx }: Rim, move: Similarity): Rim {
  const zoom = Math.hypot(move.a, move.b);
  return {
    middlePx: moved(move, middlePx),
    halfWidthPx: halfWidthPx * zoom,
    mmPerPx: mmPerPx === null ? null : mmPerPx / zoom,
  };
}

/** From the stand's picture to the photo; the same place where the photo was not brought in line. */
function photoFromStand({ frame, widthPx, heightPx }: PhotoReport): Similarity {
  const middle: PointPx = [(widthPx ?? 0) / 2, (heightPx ?? 0) / 2];
  return similarityAbout(middle, frame ?? { shiftPx: [0, 0], turnDeg: 0, zoom: 1 });
}

function placesByMiddles(views: readonly TakenView[], usable: readonly CutOut[]): (RimPlace | null)[] {
  const feet = usable.flatMap(({ canopy, report }) => {
    const silhouette = readSilhouette(canopy);
    if (silhouette === null) return [];
    const photoPx = (report.widthPx ?? canopy.width) / canopy.width;
    const lowest = silhouette.topPx + silhouette.heightPx;
    return [moved(inverseOf(photoFromStand(report)), [silhouette.centroidPx[0] * photoPx, lowest * photoPx])];
  });
  const foot: PointPx = [mean(feet.map(([x]) => x)), Math.max(...feet.map(([, y]) => y))];
  return views.map((view) =>
    isCutOut(view)
      ? {
          middlePx: moved(photoFromStand(view.report), foot),
          halfWidthPx: null,
          mmPerPx: view.report.scale?.mmPerPx ?? null,
          doubtPx: 0,
          axisFrom: 'middles',
        }
      : null,
  );
}
