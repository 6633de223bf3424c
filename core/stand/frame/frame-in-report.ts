import type { Frame } from '../../report.ts';
import type { PhotoFacts } from '../../report-of-measures.ts';
import { ELSEWHERE_NOTE, FAR_NOTE, frameInWords } from './frame-words.ts';

/** The frame as the report gives it, px of the photo as stored upright; `null` when it is not known. */
export function frameOf(photo: PhotoFacts, mmPerPx: number | null): Frame | null {
  const fit = photo.stand?.frame?.fit;
  if (fit === undefined) return null;
  const [x, y] = fit.shiftPx;
  return {
    from: fit.from,
    shiftPx: [(x * photo.widthPx) / photo.rasterWidthPx, (y * photo.heightPx) / photo.rasterHeightPx],
    shiftMm: mmPerPx === null ? null : [x * mmPerPx, y * mmPerPx],
    turnDeg: fit.turnDeg,
    zoom: fit.zoom,
    standing: fit.standing,
    words: frameInWords(fit, {
      longerSidePx: Math.max(photo.rasterWidthPx, photo.rasterHeightPx),
      mmPerPx,
      cameraDistanceMm: photo.stand?.cameraDistanceMm ?? null,
    }),
  };
}

/** Why the photo's scores are compared with no other's, in a plain sentence or two; `null` when they may be. */
export function whyNotCompared(photo: PhotoFacts, mmPerPx: number | null): string | null {
  const frame = frameOf(photo, mmPerPx);
  if (frame?.standing === 'far') return `${frame.words} ${FAR_NOTE}`;
  return photo.stand?.isElsewhere ? ELSEWHERE_NOTE : null;
}

/** What the stand has to say in the report's notes: a camera that was moved, and what to do when it is too far. */
export function standNotes(photo: PhotoFacts, mmPerPx: number | null): string[] {
  const frame = frameOf(photo, mmPerPx);
  const told = frame === null || frame.standing === 'same' ? [] : [frame.words];
  if (frame?.standing === 'far') told.push(FAR_NOTE);
  return [...told, ...(photo.stand?.notes ?? [])];
}
