import type { PhotoReport } from '../../../../core/report.ts';
import { boxAround, outlinePath, type Point } from '../../photo/points.ts';
import type { Measure } from '../reading.ts';
import { FillPicture } from './FillPicture.tsx';
import { LopsidednessPicture } from './LopsidednessPicture.tsx';
import styles from './MeasurePicture.module.css';
import { RoundnessPicture } from './RoundnessPicture.tsx';
import { SizePicture } from './SizePicture.tsx';
import { SymmetryPicture } from './SymmetryPicture.tsx';

/** What a picture of a number is drawn from. Photo px; `unitPx` is about one CSS px. */
export interface MeasureDrawing {
  readonly report: PhotoReport;
  readonly outlinePx: readonly Point[];
  readonly unitPx: number;
}

const PICTURES: Partial<
  Record<Measure, { Drawing: (drawing: MeasureDrawing) => React.ReactNode; words: string }>
> = {
  roundness: {
    Drawing: RoundnessPicture,
    words:
      'The smoothed outline of this photo between its two circles. The nearer they lie, the higher the score.',
  },
  outOfRound: {
    Drawing: RoundnessPicture,
    words: 'The smoothed outline of this photo between its two circles. The gap between them is the number.',
  },
  symmetry: {
    Drawing: SymmetryPicture,
    words:
      'The canopy of this photo and its mirror image in the plant’s axis. What both share is filled; what one has alone is hatched.',
  },
  lopsidedness: {
    Drawing: LopsidednessPicture,
    words:
      'The plant’s axis through the middle of the rim, and the middle of the canopy’s area as a dot. The bar between them is the number.',
  },
  fill: {
    Drawing: FillPicture,
    words: 'The canopy of this photo in a band stretched round it. What is hatched takes the number down.',
  },
  size: { Drawing: SizePicture, words: 'The ball of this photo, and its width.' },
};

/** How wide the picture stands, CSS px, at the most. */
const WIDTH = 260;

/** A number drawn on this photo's own outline; nothing for a number that has no picture of its own. */
export function MeasurePicture({
  measure,
  report,
  outlinePx,
}: {
  measure: Measure;
  report: PhotoReport;
  outlinePx: readonly Point[];
}) {
  const picture = PICTURES[measure];
  const box = boxAround(reachOf(report, outlinePx));
  if (!picture || !report.ball || !box) return null;
  const unitPx = box.width / WIDTH;
  const room = 10 * unitPx;
  const drawn = picture.Drawing({ report, outlinePx, unitPx });
  if (drawn === null) return null;
  return (
    <figure className={styles.picture}>
      <svg
        viewBox={`${box.x - room} ${box.y - room} ${box.width + 2 * room} ${box.height + 2 * room}`}
        width={WIDTH}
        role="img"
        aria-label={picture.words}
      >
        {drawn}
      </svg>
      <figcaption>{picture.words}</figcaption>
    </figure>
  );
}

function reachOf({ ball, axis }: PhotoReport, outlinePx: readonly Point[]): Point[] {
  if (!ball) return [];
  const [x, y] = ball.centrePx;
  // The outer of the two circles reaches about that far beyond the ball.
  const reach = ball.radiusPx + (ball.outOfRoundPx ?? 0);
  return [
    ...outlinePx,
    [x - reach, y - reach],
    [x + reach, y + reach],
    ...(axis ? [axis.rimLeftPx, axis.rimRightPx] : []),
  ];
}

/** The canopy as a quiet shape behind what is drawn. */
export function CanopyShape({ outlinePx }: { outlinePx: readonly Point[] }) {
  return <path d={outlinePath(outlinePx)} className={styles.canopy} />;
}
