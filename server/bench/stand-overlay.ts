import type { PointPx } from '../../core/raster/raster.ts';
import { inverseOf, moved, similarityAbout } from '../../core/stand/frame/similarity.ts';
import type { StandOverlay } from '../schemas/stand.ts';
import type { Database } from '../store/database.ts';
import { photoBySha256 } from '../store/photos.ts';
import { type StandVersionRow, versionsOfStand } from '../store/stand-versions.ts';
import { type ViewRow, viewOfPhoto, viewsOfPlant } from '../store/views.ts';

/** Two pictures whose sides are as long to each other within this share show the same field. */
const SAME_SHAPE = 0.01;

/**
 * What lies over the live picture: the stand's reference and the plant's last silhouette on it, brought into the
 * reference's frame. `null` while the stand has no photo.
 */
export function standOverlay(db: Database, standId: string, plantId: string | null): StandOverlay | null {
  const versions = versionsOfStand(db, standId);
  const version = versions[0];
  const reference = photoBySha256(db, version === undefined ? '' : (referenceOf(version) ?? ''));
  if (!version || reference === null) return null;
  const { widthPx, heightPx } = reference;
  // A change of the light, say, begins a version and leaves the frame as it was.
  const sameFrame = versions.filter((one) => referenceOf(one) === reference.sha256).map(({ id }) => id);
  const last = plantId === null ? null : lastInFrame(db, plantId, sameFrame, widthPx / heightPx);
  const inStand = last === null ? null : intoStand(last, widthPx / last.widthPx);
  const axis = last?.report?.axis ?? null;
  return {
    widthPx,
    heightPx,
    outlinePx: inStand === null ? [] : (last?.outlinePx ?? []).map(inStand),
    outlineDay: last?.day ?? null,
    rim:
      inStand === null || axis === null
        ? null
        : { leftPx: inStand(axis.rimLeftPx), rightPx: inStand(axis.rimRightPx) },
    marksPx: version.emptyCheck?.reading?.marksPx ?? [],
    photoUrl: pictureAddress(db, version, standId),
  };
}

function referenceOf({ emptyPhoto, firstPhoto }: StandVersionRow): string | null {
  return emptyPhoto ?? firstPhoto;
}

/** The plant's newest view with an outline that is comparable: in this frame, of the same shape, not from afar. */
function lastInFrame(
  db: Database,
  plantId: string,
  versionIds: readonly number[],
  shape: number,
): ViewRow | null {
  const fits = ({ standVersionId, widthPx, heightPx, outlinePx, report }: ViewRow) =>
    standVersionId !== null &&
    versionIds.includes(standVersionId) &&
    Math.abs(widthPx / heightPx / shape - 1) < SAME_SHAPE &&
    (outlinePx ?? []).length > 0 &&
    report?.status === 'measured' &&
    report.frame?.standing !== 'far';
  return viewsOfPlant(db, plantId).find(fits) ?? null;
}

/** From px of a view's photo to px of the reference. */
function intoStand({ widthPx, heightPx, report }: ViewRow, enlarged: number): (point: PointPx) => PointPx {
  const frame = report?.frame ?? null;
  const middle: PointPx = [widthPx / 2, heightPx / 2];
  const toStand = frame === null ? null : inverseOf(similarityAbout(middle, frame));
  return (point) => {
    const [x, y] = toStand === null ? point : moved(toStand, point);
    return [x * enlarged, y * enlarged];
  };
}

function pictureAddress(db: Database, version: StandVersionRow, standId: string): string {
  if (version.emptyPhoto !== null)
    return `/api/stands/${standId}/empty-photo/${version.emptyPhoto.slice(0, 8)}`;
  const view = viewOfPhoto(db, version.firstPhoto ?? '');
  if (view === null) throw new RangeError(`Expected a view of the first photo of the stand ${standId}`);
  return `/api/views/${view.id}/picture`;
}
