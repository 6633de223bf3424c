import { Icon } from '../parts/Icon.tsx';
import styles from './MendTools.module.css';
import type { StrokeHistory } from './stroke-history.ts';

/** Takes strokes back, brings them again, clears them. */
export function StrokeTools({
  history,
  onUndo,
  onRedo,
  onClear,
}: {
  history: StrokeHistory;
  onUndo: () => void;
  onRedo: () => void;
  onClear: () => void;
}) {
  return (
    <div className={styles.strokes}>
      <button type="button" className={styles.tool} disabled={history.earlier.length === 0} onClick={onUndo}>
        <Icon name="undo" /> <span>Undo</span>
      </button>
      <button type="button" className={styles.tool} disabled={history.later.length === 0} onClick={onRedo}>
        <Icon name="redo" /> <span>Redo</span>
      </button>
      <button type="button" className={styles.tool} disabled={history.strokes.length === 0} onClick={onClear}>
        <Icon name="remove" /> <span>Clear all</span>
      </button>
    </div>
  );
}
