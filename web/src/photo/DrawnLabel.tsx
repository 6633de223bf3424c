import { clampInto, labelSize } from './label-size.ts';
import styles from './Overlay.module.css';
import type { Box, Point } from './points.ts';

/** Words on the photo, on a plate of their own so that they read on leaf, bloom and cloth alike. */
export function DrawnLabel({
  at,
  words,
  tone,
  crop,
  unitPx,
}: {
  at: Point;
  words: string;
  tone: 'cut' | 'plain';
  crop: Box;
  unitPx: number;
}) {
  const size = labelSize(words, unitPx);
  const [x, y] = clampInto(crop, at, size);
  return (
    <g className={styles.label} data-tone={tone}>
      <rect
        x={x - size.width / 2}
        y={y - size.height / 2}
        width={size.width}
        height={size.height}
        rx={size.height / 2}
      />
      <text x={x} y={y} dy="0.34em" textAnchor="middle" fontSize={size.fontPx}>
        {words}
      </text>
    </g>
  );
}
