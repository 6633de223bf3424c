import { Link } from 'wouter';
import type { TurnedFault } from '../../../core/turned/fault-words.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { changeTurns } from '../api/turned.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { repairOf } from './repair.ts';
import styles from './TurnedFaults.module.css';

/** What went wrong in taking the views, each with its repair where one is known. */
export function TurnedFaults({
  sitting,
  views,
  onShow,
}: {
  sitting: Sitting;
  /** In the order in which the faults count them. */
  views: readonly View[];
  /** Shows a view; left out where its photo is in sight. */
  onShow?: (viewId: string) => void;
}) {
  const faults = sitting.turned?.faults ?? [];
  if (faults.length === 0) return null;
  return (
    <ul className={styles.faults} aria-label="Found in the views">
      {faults.map((fault) => (
        <FaultPiece key={fault.words} {...{ sitting, views, fault, onShow }} />
      ))}
    </ul>
  );
}

function FaultPiece({
  sitting,
  views,
  fault,
  onShow,
}: {
  sitting: Sitting;
  views: readonly View[];
  fault: TurnedFault;
  onShow: ((viewId: string) => void) | undefined;
}) {
  const { busy, fault: refused, send } = useSending();
  const repair = repairOf(fault, views);
  const view = views[fault.view];
  return (
    <li className={styles.piece}>
      <p>
        <b>▲ {FAULT_NAMES[fault.kind]}.</b> {fault.words}
      </p>
      <div className={buttons.row}>
        {repair && (
          <button
            type="button"
            className={buttons.button}
            disabled={busy}
            onClick={() => send(() => changeTurns(sitting.plantId, views, repair.changes, repair.done))}
          >
            <Icon name="mend" /> {repair.words}
          </button>
        )}
        {view && onShow && (
          <button type="button" className={buttons.quiet} onClick={() => onShow(view.id)}>
            See view {fault.view + 1}
          </button>
        )}
        {view && (
          <Link
            href={`/plants/${sitting.plantId}/turned?sitting=${sitting.id}&turn=${view.turnDeg ?? 0}`}
            className={buttons.quiet}
          >
            <Icon name="camera" /> Photograph it again
          </Link>
        )}
      </div>
      {refused !== null && <Fault fault={refused} />}
    </li>
  );
}

const FAULT_NAMES: Record<TurnedFault['kind'], string> = {
  'turn-wrong': 'A turn looks wrong',
  'views-swapped': 'Two views look swapped',
  'pot-moved': 'The pot was moved',
};
