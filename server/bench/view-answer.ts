import { createHash } from 'node:crypto';
import { NO_OUTLINES } from '../../core/silhouette/parts-outlines.ts';
import { isClockNote } from '../intake/clock-notes.ts';
import type { View } from '../schemas/sitting.ts';
import type { ViewRow } from '../store/views.ts';

/** A view as the screen gets it. The name and turn in the report are those of now. */
export function viewAnswer(view: ViewRow): View {
  const address = `/api/views/${view.id}`;
  return {
    id: view.id,
    sittingId: view.sittingId,
    fileName: view.fileName,
    turnDeg: view.turnDeg,
    turnFrom: view.turnFrom,
    standId: view.standId,
    standVersion: view.standVersion,
    takenAt: view.takenAt,
    takenFrom: view.takenFrom,
    widthPx: view.widthPx,
    heightPx: view.heightPx,
    state: view.state,
    failure: view.failure,
    methodVersion: view.methodVersion,
    normalLeafFrom: view.normalLeafFrom,
    report: view.report && {
      ...view.report,
      photo: view.fileName,
      turnDeg: view.turnDeg,
      notes: notesOf(view),
    },
    outlinePx: view.outlinePx ?? [],
    drawing: { unsure: view.report?.unsure ?? [], parts: view.parts ?? NO_OUTLINES },
    strokes: view.strokes,
    rimByHand: view.rimByHand,
    afterWork: view.afterWork,
    acceptedOutline: view.acceptedAt !== null,
    pictureUrl: `${address}/picture`,
    maskUrl: view.hasMask ? `${address}/mask?of=${measuredAs(view)}` : null,
  };
}

/** Another one for each measurement, so that the browser asks for the new mask; it tells nobody how many there are. */
function measuredAs({ id, measurementId }: ViewRow): string {
  return createHash('sha256').update(`${id} ${measurementId}`).digest('base64url').slice(0, 16);
}

function notesOf({ report, takenFrom }: ViewRow): readonly string[] {
  const notes = report?.notes ?? [];
  return takenFrom === 'grower' ? notes.filter((note) => !isClockNote(note)) : notes;
}
