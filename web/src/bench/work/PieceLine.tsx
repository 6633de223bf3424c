import { Link } from 'wouter';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { todayHere } from '../../words/day-words.ts';
import { useSettling } from './use-settling.tsx';
import styles from './WorkList.module.css';
import type { NamedPiece } from './work-groups.ts';
import { waitWords } from './work-words.ts';

/** One plant of work that many have. */
export function PieceLine({ piece }: { piece: NamedPiece }) {
  const { busy, fault, settle, openSheet, sheet } = useSettling([piece]);
  return (
    <li className={styles.piece}>
      <p>
        <Link href={`/plants/${piece.plantId}`}>{piece.plantName}</Link>, {waitWords(piece, todayHere())}
      </p>
      <div className={styles.acts}>
        {piece.kind === 'photograph' && (
          <Link href={`/plants/${piece.plantId}?add-photos`} className={buttons.icon}>
            <Icon name="camera" /> Add a photo<span className="only-heard"> {piece.plantName}</span>
          </Link>
        )}
        <button type="button" className={buttons.icon} disabled={busy} onClick={() => settle()}>
          <Icon name="keep" /> Done<span className="only-heard"> {piece.plantName}</span>
        </button>
        <button type="button" className={buttons.icon} disabled={busy} onClick={openSheet}>
          Move or skip<span className="only-heard"> {piece.plantName}</span>
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
      {sheet}
    </li>
  );
}
