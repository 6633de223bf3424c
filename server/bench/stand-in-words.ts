import type { StandVersionRow, VersionFacts } from '../store/stand-versions.ts';

const LIGHT = {
  left: 'from the left',
  right: 'from the right',
  'behind-camera': 'from behind the camera',
  'behind-plant': 'from behind the plant',
  above: 'from above',
} as const;

const SCALE = {
  sheet: 'from the stand sheet',
  rim: 'from the pot rim',
  none: 'from nothing set up',
} as const;

/** What became different between two states of a stand, a sentence each; empty when nothing did. */
export function changesInWords(before: VersionFacts, after: VersionFacts): string[] {
  const words: string[] = [];
  if (before.cameraDistanceMm !== after.cameraDistanceMm) {
    words.push(`The camera stands ${lengthInWords(after.cameraDistanceMm)} from the plant.`);
  }
  if (before.cameraHeightMm !== after.cameraHeightMm) {
    words.push(`The lens is ${lengthInWords(after.cameraHeightMm)} above the pot’s place.`);
  }
  if (before.backdrop !== after.backdrop) {
    words.push(after.backdrop === null ? 'The backdrop is not told.' : `The backdrop is ${after.backdrop}.`);
  }
  if (before.lightSide !== after.lightSide) {
    const from = after.lightSide === null ? 'from a side not told' : LIGHT[after.lightSide];
    words.push(`The light comes ${from}.`);
  }
  if (before.scaleFrom !== after.scaleFrom) words.push(`The scale comes ${SCALE[after.scaleFrom]}.`);
  if (!sameSheet(before.sheet, after.sheet)) words.push(sheetInWords(after.sheet));
  if (before.emptyPhoto !== after.emptyPhoto) words.push(emptyPhotoInWords(before, after));
  return words;
}

/** Whether two sheets are the same, fixed in the same place. */
export function sameSheet(one: StandVersionRow['sheet'], other: StandVersionRow['sheet']): boolean {
  return (
    one?.paper === other?.paper &&
    one?.place === other?.place &&
    one?.plantInFrontMm === other?.plantInFrontMm
  );
}

function sheetInWords(sheet: StandVersionRow['sheet']): string {
  if (sheet === null) return 'There is no stand sheet.';
  const place = sheet.place === 'backdrop' ? 'hangs on the backdrop' : 'lies on the bench';
  const inFront = sheet.plantInFrontMm === 0 ? '' : `, the pot ${sheet.plantInFrontMm} mm in front of it`;
  return `The stand sheet (${sheet.paper}) ${place}${inFront}.`;
}

function emptyPhotoInWords(before: VersionFacts, after: VersionFacts): string {
  if (after.emptyPhoto === null) return 'The empty photo of before no longer counts.';
  return before.emptyPhoto === null ? 'An empty photo was added.' : 'The empty photo was taken anew.';
}

function lengthInWords(mm: number | null): string {
  return mm === null ? 'an unknown way' : `${mm} mm`;
}
