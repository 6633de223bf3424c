import type { FoundPlant, NoPlant } from './found-plant.ts';

/** What to do about a photo that cannot be measured, one plain sentence each. */
const HINTS: Record<NoPlant['reason'], string> = {
  'no-canopy':
    'No plant was found in this photo: stand the plant in the middle, before a plain backdrop whose colour differs from its leaves, and take it again.',
  'touches-edge':
    'The plant runs out of the photo: move the camera back or the plant to the middle until there is space all round it, and take it again.',
  'two-plants':
    'Two plants stand in this photo: take one of them away, or crop the photo to one plant, and take it again.',
  'too-dark':
    'The photo is too dark to tell the plant from its surroundings: give it more light or a longer exposure, and take it again.',
  blurred:
    'The photo is blurred: hold the camera still or put it on a stand, focus on the plant, and take it again.',
};

/** The answer for a photo on which no canopy can be measured. */
export function noPlant(reason: NoPlant['reason'], cutOut: FoundPlant | null = null): NoPlant {
  return { ok: false, reason, hint: HINTS[reason], cutOut };
}

/** Sentences for the report's notes. */
export const NOTES = {
  busyPlace:
    'The backdrop is busy and there is no photo of the empty stand, so the outline was guessed from plant colours: check it, or use a plain backdrop.',
  emptyMoved:
    'The photo of the empty stand does not fit this photo (the camera was moved, or the light is too different), so it was left aside.',
  noPot: 'No pot was found in the photo, so there is no scale and no plant axis.',
  footCut: 'The lower edge of the photo cuts the plant or its pot; what lies below is not counted.',
  tipAtEdge: 'A tip of the plant reaches the edge of the photo and may be cut short.',
  faintEdge: 'Parts of the plant differ little from the backdrop, so the outline is less sure than usual.',
  unsharp: 'The photo is a little unsharp; the outline is less sure than usual.',
} as const;
