import { type CertaintyCheck, calibrationError, certaintyLines } from './certainty-check.ts';
import { confidenceLines, meanAbsoluteError, rankCorrelation, type Stated } from './confidence.ts';
import type { FolderScore } from './score-folder.ts';

/** How far what was said can be believed: of whole photos, and of single pixels. */
export function confidenceTable({ name, photos, pixelCheck }: FolderScore): string[] {
  const stated = photos.flatMap(({ confidence, iou }): Stated[] =>
    confidence === null ? [] : [{ confidence, iou }],
  );
  return [
    `${name}: stated confidence against what came out`,
    ...ofPhotos(stated),
    ...ofPixels(pixelCheck),
    '',
  ];
}

function ofPhotos(photos: readonly Stated[]): string[] {
  if (photos.length === 0) return ['  no photo was measured'];
  const rank = rankCorrelation(photos);
  return [
    '  confidence     photos   stated   measured IoU, means',
    ...confidenceLines(photos).map(
      ({ from, to, photos: count, meanStated, meanMeasured }) =>
        `  ${from.toFixed(2)} to ${to.toFixed(2)}${String(count).padStart(9)}` +
        `${meanStated.toFixed(3).padStart(9)}${meanMeasured.toFixed(3).padStart(11)}`,
    ),
    `  off by ${meanAbsoluteError(photos).toFixed(3)} in the mean; rank correlation ${rank === null ? 'unknown: fewer than three photos' : rank.toFixed(2)}`,
  ];
}

function ofPixels(pixelCheck: CertaintyCheck): string[] {
  const lines = certaintyLines(pixelCheck);
  const words = (value: number | null) => (value === null ? '–' : value.toFixed(3)).padStart(9);
  return [
    '  chance that a pixel in or near the canopy is right',
    '  stated         pixels   stated    right',
    ...lines.map(
      ({ from, to, share, stated, right }) =>
        `  ${from.toFixed(2)} to ${to.toFixed(2)}${`${(100 * share).toFixed(1)} %`.padStart(9)}${words(stated)}${words(right)}`,
    ),
    `  off by ${calibrationError(lines).toFixed(3)} in the mean over pixels`,
  ];
}
