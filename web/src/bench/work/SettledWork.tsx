import { Link } from 'wouter';
import { takeBackWork } from '../../api/work-words.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { announce } from '../../parts/undo.ts';
import { useSending } from '../../parts/use-sending.ts';
import styles from './WorkList.module.css';
import type { NamedPiece } from './work-groups.ts';

/** What was done or skipped these days; each can go on the list again. */
export function SettledWork({ pieces }: { pieces: readonly NamedPiece[] }) {
  const { busy, fault, send } = useSending();
  return (
    <details className={styles.later}>
      <summary>Done or skipped: {pieces.length}</summary>
      {fault !== null && <Fault fault={fault} />}
      <ul className={styles.pieces}>
        {pieces.map((piece) => (
          <li key={piece.key} className={styles.piece}>
            <p>
              <Link href={`/plants/${piece.plantId}`}>{piece.plantName}</Link>: {piece.what}{' '}
              <span className={styles.standing}>{piece.stateInWords}</span>
            </p>
            {/* What a record tells is taken back by removing the record. */}
            {piece.doneOn === null && (
              <button
                type="button"
                className={buttons.icon}
                disabled={busy}
                onClick={() =>
                  send(async () => {
                    await takeBackWork(piece);
                    announce('It is on the list again.');
                  })
                }
              >
                <Icon name="undo" /> Take back
                <span className="only-heard">
                  {' '}
                  {piece.what} {piece.plantName}
                </span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
