import { lazy, Suspense, useId, useState } from 'react';
import { Link } from 'wouter';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { todayHere } from '../../words/day-words.ts';
import { countWords } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';
import { PieceLine } from './PieceLine.tsx';
import { useSettling } from './use-settling.tsx';
import styles from './WorkList.module.css';
import type { WorkGroup } from './work-groups.ts';
import { groupDays, namesInWords, stopDepth, WORK_ICONS, waitWords } from './work-words.ts';

const RecordSheet = lazy(() => import('../many/RecordSheet.tsx'));

/** The same work on one plant or many: what, where, the caution, and one tap to have it done. */
export function WorkLine({
  group,
  rows,
  onSettled,
}: {
  group: WorkGroup;
  /** The plants of the list. */
  rows: readonly BenchRow[];
  onSettled: () => void;
}) {
  const { kind, what, cautions, pieces } = group;
  const { busy, fault, settle, openSheet, sheet } = useSettling(pieces, onSettled);
  const [isOpen, setOpen] = useState(false);
  const [isWriting, setWriting] = useState(false);
  const foldId = useId();
  const today = todayHere();
  const [first] = pieces;
  const isOne = pieces.length === 1;
  if (first === undefined) return null;
  return (
    <li className={styles.line}>
      <span className={styles.icon}>
        <Icon name={WORK_ICONS[kind]} size={26} />
      </span>
      <div className={styles.words}>
        <h3 className={styles.what}>{what}</h3>
        <p className={styles.where}>
          {isOne ? (
            <>
              <Link href={`/plants/${first.plantId}`}>{first.plantName}</Link>, {waitWords(first, today)}
            </>
          ) : (
            <>
              <b>{countWords(pieces.length, 'plant')}</b>: {namesInWords(pieces)}
              {first.state === 'to-come' && `, ${groupDays(group, today)}`}
            </>
          )}
        </p>
        {cautions.map((words) => (
          <p key={words} className={styles.caution}>
            <b>Take care.</b> {words}
          </p>
        ))}
      </div>
      <div className={styles.acts}>
        {kind === 'photograph' && isOne && (
          <Link href={`/plants/${first.plantId}?add-photos`} className={buttons.quiet}>
            <Icon name="camera" /> Add a photo
          </Link>
        )}
        {kind === 'stop' ? (
          <button type="button" className={buttons.quiet} onClick={() => setWriting(true)}>
            <Icon name="edit" /> Done: write it down
          </button>
        ) : (
          <button type="button" className={buttons.quiet} disabled={busy} onClick={() => settle()}>
            <Icon name="keep" /> {isOne ? 'Done' : `All ${pieces.length} done`}
            <span className="only-heard"> {what}</span>
          </button>
        )}
        <button type="button" className={buttons.icon} disabled={busy} onClick={openSheet}>
          Move or skip<span className="only-heard"> {what}</span>
        </button>
        <button
          type="button"
          className={`${buttons.icon} ${styles.fold}`}
          aria-expanded={isOpen}
          aria-controls={foldId}
          onClick={() => setOpen(!isOpen)}
        >
          {isOne ? 'Why' : 'One by one'}
          <span className="only-heard"> {what}</span>
        </button>
      </div>
      <div id={foldId} className={styles.folded} hidden={!isOpen}>
        {/* Made only when it is unfolded: on a large bench it is some hundred lines a piece of work. */}
        {isOpen && (
          <>
            <p>{first.why}</p>
            <p className={styles.standing}>{first.standing}</p>
            {isOne || (
              <ul className={styles.pieces}>
                {pieces.map((piece) => (
                  <PieceLine key={piece.key} piece={piece} />
                ))}
              </ul>
            )}
          </>
        )}
      </div>
      {fault !== null && <Fault fault={fault} />}
      {sheet}
      {isWriting && (
        <Suspense fallback={null}>
          <RecordSheet
            picked={rows.filter(({ plant }) => pieces.some(({ plantId }) => plantId === plant.id))}
            first={stopDepth(first)}
            onClose={() => setWriting(false)}
          />
        </Suspense>
      )}
    </li>
  );
}
