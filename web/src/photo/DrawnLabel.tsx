import { clampInto, labelSize } from './label-size.ts';
import styles from './Overlay.module.css';
import type { Box, Point } from './points.ts';

/**
 * Words on the photo, on a plate of their own so that they read on leaf, bloom and cloth alike. A `number`
 * stands apart on a dark disc, so that mark 1 with 8 mm is never read as 18 mm.
 */
export function DrawnLabel({
  at,
  words,
  number = null,
  crop,
  unitPx,
}: {
  at: Point;
  words: string;
  number?: number | null;
  crop: Box;
  unitPx: number;
}) {
  const size = labelSize(words, unitPx, number !== null);
  const [x, y] = clampInto(crop, at, size);
  const [left, discPx] = [x - size.width / 2, size.height / 2];
  const textX = number === null ? x : x + size.discRoomPx / 2;
  return (
    <g className={styles.label} data-tone={number === null ? 'plain' : 'cut'}>
      <rect x={left} y={y - discPx} width={size.width} height={size.height} rx={discPx} />
      {number !== null && (
        <g className={styles.disc}>
          <circle cx={left + discPx} cy={y} r={discPx - unitPx} />
          <text x={left + discPx} y={y} dy="0.34em" textAnchor="middle" fontSize={size.fontPx}>
            {number}
          </text>
        </g>
      )}
      <text x={textX} y={y} dy="0.34em" textAnchor="middle" fontSize={size.fontPx}>
        {words}
      </text>
    </g>
  );
}
