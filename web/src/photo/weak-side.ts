import type { PhotoReport } from '../../../core/report.ts';
import type { Box, Point } from './points.ts';

/** The weaker half of the ball: the side the canopy does not lean to. */
export interface WeakSide {
  readonly side: 'left' | 'right';
  /** The half of the ball's box on that side and above the rim, in photo px. */
  readonly half: Box;
  /** Where the ball's edge meets the label, in photo px. */
  readonly label: Point;
}

/** The label stands this far below the ball's middle height, radians: away from most long stems. */
const LABEL_TURN = 0.42;

/** `null` when the canopy stands even inside its plus-minus, or lopsidedness is not known. */
export function weakSideOf(report: PhotoReport): WeakSide | null {
  const { ball, lopsidedness, axis } = report;
  if (!ball || !lopsidedness || lopsidedness.side === 'even') return null;
  const side = lopsidedness.side === 'left' ? 'right' : 'left';
  const [centreX, centreY] = ball.centrePx;
  const middle = axis?.xPx ?? centreX;
  const [left, right] = [centreX - ball.radiusPx, centreX + ball.radiusPx];
  const [from, to] = side === 'left' ? [left, Math.max(left, middle)] : [Math.min(right, middle), right];
  const top = centreY - ball.radiusPx;
  // Below the rim the pot hides the ball: nothing can be missing there.
  const rimY = axis ? (axis.rimLeftPx[1] + axis.rimRightPx[1]) / 2 : Infinity;
  const foot = Math.max(Math.min(centreY + ball.radiusPx, rimY), top);
  return {
    side,
    half: { x: from, y: top, width: to - from, height: foot - top },
    label: [
      centreX + (side === 'left' ? -1 : 1) * ball.radiusPx * Math.cos(LABEL_TURN),
      centreY + ball.radiusPx * Math.sin(LABEL_TURN),
    ],
  };
}
