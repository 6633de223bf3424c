import type { GreyReading, NoSheet, SheetFit } from './sheet-reading.ts';

/** What to do when the sheet cannot be read. */
export const HINTS: Readonly<Record<NoSheet['reason'], string>> = {
  'no-marks':
    'No ring of the stand sheet was found. Bring the sheet into the picture, sharp and out of the shade, with its rings in full sight.',
  'one-mark':
    'Only one ring of the stand sheet was found. Move the plant or the sheet so that at least three of the five rings show.',
  unclear:
    'The rings that were found do not make out the stand sheet. Move the plant or the sheet so that at least three of the five rings show in full.',
  'other-paper':
    'The rings stand as on the other paper size. Say whether the sheet was printed on A4 or Letter, and check that its line is 100 mm long.',
};

export const NO_DISTANCE =
  'How far the camera stands from the sheet cannot be told: the photo says nothing of its focal length, and the sheet shows too little perspective.';

export function marksNote(seen: number, all: number, fit: SheetFit): string | null {
  if (seen === all) return null;
  const rings = `${seen} of the stand sheet’s ${all} rings were seen`;
  if (fit === 'perspective') return `${rings}; that is enough.`;
  if (fit === 'affine') return `${rings}: the scale is good to about 2 %, and the sheet’s tilt is not known.`;
  return `${rings}: the sheet is taken to face the camera, and the scale is good to about 3 %.`;
}

export function greyNote({ state }: GreyReading): string | null {
  switch (state) {
    case 'ok':
      return null;
    case 'too-bright':
      return 'The grey patches are too bright to tell the light’s colour: the photo is overexposed there.';
    case 'too-dark':
      return 'The grey patches are too dark to tell the light’s colour.';
    case 'not-seen':
      return 'Too few grey patches are in sight to tell the light’s colour.';
  }
}
