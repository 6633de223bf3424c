import type { PhotoReport } from '../../../core/report.ts';

/** How the stand lies in this photo against its own picture, in figures. */
export function movedWords({ shiftPx, shiftMm, turnDeg, zoom }: NonNullable<PhotoReport['frame']>): string {
  const [x, y] = shiftMm ?? shiftPx;
  const unit = shiftMm ? 'mm' : 'px';
  const parts = [
    `${Math.abs(x).toFixed(1)} ${unit} to the ${x < 0 ? 'left' : 'right'}`,
    `${Math.abs(y).toFixed(1)} ${unit} ${y < 0 ? 'up' : 'down'}`,
    `turned ${Math.abs(turnDeg).toFixed(1)}° ${turnDeg < 0 ? 'anticlockwise' : 'clockwise'}`,
    `${Math.abs((zoom - 1) * 100).toFixed(1)} % ${zoom < 1 ? 'smaller' : 'larger'}`,
  ];
  return `In this photo the stand lies ${parts.join(', ')}.`;
}
