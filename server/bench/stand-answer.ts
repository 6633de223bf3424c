import type { Stand } from '../schemas/stand.ts';
import type { Database } from '../store/database.ts';
import { photoBySha256 } from '../store/photos.ts';
import { type StandVersionRow, versionsOfStand } from '../store/stand-versions.ts';
import type { StandRow } from '../store/stands.ts';

/** A stand as the screen gets it. */
export function standAnswer(db: Database, stand: StandRow): Stand {
  const versions = versionsOfStand(db, stand.id);
  const [current] = versions;
  if (!current) throw new RangeError(`Expected a stand with a version but received ${stand.id}`);
  return {
    id: stand.id,
    version: current.number,
    name: stand.name,
    lightSide: current.lightSide,
    backdrop: current.backdrop,
    cameraDistanceMm: current.cameraDistanceMm,
    cameraHeightMm: current.cameraHeightMm,
    scaleFrom: current.scaleFrom,
    sheet: current.sheet,
    latitudeDeg: stand.latitudeDeg,
    lightBearingDeg: stand.lightBearingDeg,
    emptyPhoto: emptyPhotoAnswer(db, current),
    reference:
      current.emptyPhoto !== null ? 'empty-photo' : current.firstPhoto !== null ? 'first-photo' : null,
    sinceDay: current.sinceDay,
    history: versions.map(({ number, sinceDay, changed }) => ({ version: number, sinceDay, changed })),
    plants: stand.plants,
    putAway: stand.putAway,
  };
}

function emptyPhotoAnswer(
  db: Database,
  { standId, emptyPhoto, emptyCheck }: StandVersionRow,
): Stand['emptyPhoto'] {
  const photo = emptyPhoto === null ? null : photoBySha256(db, emptyPhoto);
  if (photo === null || emptyCheck === null) return null;
  return {
    // The name of the photo goes along, so that a new one is not taken for the one seen before.
    url: `/api/stands/${standId}/empty-photo/${photo.sha256.slice(0, 8)}`,
    takenAt: photo.takenAt,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    ...emptyCheck,
  };
}
