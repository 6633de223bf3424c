import { type Day, day as dayOf } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import type { ArrivedFile } from '../intake/receive-photo.ts';
import type { TakenAt } from '../intake/taken-at.ts';
import type { Upload } from '../schemas/pages.ts';
import type { Services } from '../services.ts';
import { queueView } from '../store/due-view.ts';
import type { PlantRow } from '../store/plants.ts';
import { plantById } from '../store/plants.ts';
import { sittingOn } from '../store/sittings.ts';
import { settleFirstPhotos } from '../store/stand-sittings.ts';
import {
  addView,
  moveView,
  removedViewOfPhoto,
  restoreView,
  turnView,
  type ViewRow,
  viewById,
  viewOfPhoto,
} from '../store/views.ts';
import { keepPhoto } from './keep-photo.ts';
import { viewAnswer } from './view-answer.ts';

/** What the grower, or the sample bench, tells about a file. */
export interface ToldAboutPhoto {
  readonly fileName: string;
  /** Overrides the camera's day. */
  readonly day: Day | null;
  readonly turnDeg: number | null;
  /** The day on which it was chosen: its day where neither the grower nor the camera tells one. Today when left out. */
  readonly chosenDay?: Day | null;
}

type Outcome = Upload['photos'][number];

/**
 * Takes one uploaded file to a plant: reads it, keeps it and lets it wait to be measured. A file that is
 * refused, or already on the bench, leaves nothing behind. The file may be moved away.
 */
export async function addPhotoToPlant(
  services: Services,
  plant: PlantRow,
  file: ArrivedFile,
  told: ToldAboutPhoto,
): Promise<Outcome> {
  const { db } = services;
  const { fileName } = told;
  const photo = await services.receive(file);
  if (!photo.ok) {
    const altered = photo.reason === 'altered' ? { altered: true as const } : {};
    return { outcome: 'refused', fileName, detail: photo.hint, ...altered };
  }
  const shown = viewOfPhoto(db, photo.sha256);
  if (shown) return known(services, fileName, shown);

  const id = await keepPhoto(services, file.path, photo, () => {
    // Asked again: the same photo may have come in by another request while the file was being kept.
    if (viewOfPhoto(db, photo.sha256)) return null;
    const time = timeOf(photo.takenAt, told, services.today());
    const sittingId = sittingOn(db, plant, time.day);
    const removed = removedViewOfPhoto(db, photo.sha256, plant.id);
    const { takenAt, takenFrom } = time;
    const viewId = removed
      ? bringBack(services, removed, sittingId, told)
      : addView(db, {
          sittingId,
          sha256: photo.sha256,
          fileName,
          turnDeg: told.turnDeg,
          takenAt,
          takenFrom,
        });
    settleFirstPhotos(db, viewById(db, viewId)?.standId ?? null);
    return viewId;
  });
  const view = id === null ? null : viewById(db, id);
  if (view === null) {
    const other = viewOfPhoto(db, photo.sha256);
    if (other === null) throw new RangeError('Expected the view that was just added but found none');
    return known(services, fileName, other);
  }
  services.progress.tell({ plantId: plant.id, viewId: view.id, state: view.state });
  services.queue.wake();
  return { outcome: 'kept', fileName, view: viewAnswer(view) };
}

/** A photo that was removed and is sent again comes back as the view it was, with what is told now. */
function bringBack({ db }: Services, removed: ViewRow, sittingId: string, told: ToldAboutPhoto): string {
  restoreView(db, removed.id);
  if (removed.sittingId !== sittingId && told.day !== null) moveView(db, removed.id, sittingId);
  if (told.turnDeg !== null) turnView(db, removed.id, told.turnDeg);
  if (removed.state !== 'measured') queueView(db, removed.id);
  return removed.id;
}

function known({ db }: Services, fileName: string, shown: ViewRow): Outcome {
  const plant = plantById(db, shown.plantId);
  const place = plant ? `with ${plant.name}${plant.putAway ? ', which is put away' : ''}` : 'on the bench';
  return {
    outcome: 'known',
    fileName,
    viewId: shown.id,
    plantId: shown.plantId,
    detail: `This photo is already ${place}, in the sitting of ${dayInWords(dayOf(shown.day))}. Nothing was added.`,
  };
}

function timeOf(
  camera: TakenAt | null,
  told: ToldAboutPhoto,
  today: Day,
): { day: Day; takenAt: string | null; takenFrom: ViewRow['takenFrom'] } {
  if (told.day !== null) {
    const takenAt = camera?.day === told.day ? camera.localTime : null;
    return { day: told.day, takenAt, takenFrom: 'grower' };
  }
  if (camera) return { day: camera.day, takenAt: camera.localTime, takenFrom: 'exif' };
  return { day: told.chosenDay ?? today, takenAt: null, takenFrom: 'upload' };
}
