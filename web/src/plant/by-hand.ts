import type { Leaf } from './leafing.ts';

/** What the grower may have set of a photo in place of what was found in it. */
export type HandCorrection = 'rim' | 'outline' | 'turn' | 'day';

/**
 * What of a photo was set by hand and can be taken back. A turn is given with most photos, and a day with those whose camera
 * wrote none: either is a correction only where the photo says another.
 */
export function byHand({ view, sitting }: Leaf): HandCorrection[] {
  const corrections: HandCorrection[] = [];
  if (view.rimByHand !== null) corrections.push('rim');
  if (view.strokes.length > 0) corrections.push('outline');
  if (view.turnFrom === 'grower' && view.report?.collar) corrections.push('turn');
  const cameraDay = view.takenAt?.slice(0, 10);
  if (view.takenFrom === 'grower' && cameraDay && cameraDay !== sitting.day) corrections.push('day');
  return corrections;
}
