import { type Piece, takeBackWork } from '../../api/work-words.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import styles from './PlantWork.module.css';

/** Work that is done, skipped or has lapsed; the grower's own word on it can be taken back. */
export function SettledRow({ piece, onSettled }: { piece: Piece; onSettled: () => void }) {
  const { what, state, stateInWords, doneOn } = piece;
  const { busy, fault, send } = useSending();
  // What a record tells is taken back by removing the record.
  const isWord = state === 'skipped' || (state === 'done' && doneOn === null);
  async function takeBack() {
    if (await send(() => takeBackWork(piece))) onSettled();
  }
  return (
    <li className={styles.settled}>
      <p>
        {what} <span className={styles.sub}>{stateInWords}</span>
      </p>
      {isWord && (
        <button type="button" className={buttons.quiet} disabled={busy} onClick={takeBack}>
          <Icon name="undo" /> Take back<span className="only-heard">: {what}</span>
        </button>
      )}
      {fault !== null && <Fault fault={fault} />}
    </li>
  );
}
