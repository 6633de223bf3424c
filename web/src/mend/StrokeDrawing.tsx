import type { Stroke } from '../../../core/canopy/stroke.ts';
import styles from './MendPicture.module.css';

/** A stroke as wide as it was painted. */
export function StrokeBand({ stroke }: { stroke: Stroke }) {
  const d = strokePath(stroke);
  return (
    <g className={styles.band} data-kind={stroke.kind}>
      <path d={d} strokeWidth={stroke.widthPx} />
      <path d={d} className={styles.spine} />
    </g>
  );
}

/** A stroke the outline follows already: its middle alone, so that the photo can be seen. */
export function StrokeTrace({ stroke }: { stroke: Stroke }) {
  const d = strokePath(stroke);
  return (
    <g className={styles.trace} data-kind={stroke.kind}>
      <path d={d} className={styles.traceCasing} />
      <path d={d} className={styles.spine} />
    </g>
  );
}

/** A dab is a line of no length: its round ends make the dot. */
function strokePath({ pointsPx }: Stroke): string {
  const [first, ...rest] = pointsPx;
  if (!first) return '';
  return `M${first.join(' ')}L${(rest.length > 0 ? rest : [first]).map((point) => point.join(' ')).join('L')}`;
}
