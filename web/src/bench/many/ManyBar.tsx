import { useEffect, useRef, useState } from 'react';
import type { LogKind } from '../../../../core/season/log-entry.ts';
import { finishWork, recordForMany } from '../../api/many.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon, type IconName } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import { todayHere } from '../../words/day-words.ts';
import type { BenchRow } from '../need-groups.ts';
import { isWantedNow } from '../work/is-wanted-now.ts';
import { logLineOf } from '../work/log-line-of.ts';
import styles from './ManyBar.module.css';
import { doneWords, forWhom } from './many-words.ts';
import RecordSheet from './RecordSheet.tsx';

/** Written down for today with one tap. */
const AT_ONCE: readonly { kind: LogKind; words: string; icon: IconName }[] = [
  { kind: 'watered', words: 'Watered', icon: 'water' },
  { kind: 'fed', words: 'Fed', icon: 'feed' },
  { kind: 'turned', words: 'Turned', icon: 'turn' },
  { kind: 'cleared-leaf', words: 'Cleared leaf', icon: 'leaf' },
];

/** What is done to all chosen plants at once. Stays in sight while plants are chosen. */
export default function ManyBar({
  rows,
  chosen,
  onChoose,
  onClose,
}: {
  /** The plants in sight. */
  rows: readonly BenchRow[];
  chosen: ReadonlySet<string>;
  onChoose: (ids: ReadonlySet<string>) => void;
  onClose: () => void;
}) {
  const { busy, fault, send } = useSending();
  const [open, setOpen] = useState(false);
  const bar = useRef<HTMLElement>(null);
  // The button that opened the bar is gone: the keyboard goes on here.
  useEffect(() => bar.current?.focus({ preventScroll: true }), []);
  const picked = rows.filter(({ plant }) => chosen.has(plant.id));
  // A stop is written down with its depth and its day.
  const waiting = picked.flatMap(({ work }) =>
    work.filter((piece) => isWantedNow(piece) && piece.kind !== 'stop'),
  );
  const none = picked.length === 0 || busy;

  const writeDown = (kind: LogKind) =>
    send(() =>
      recordForMany(
        picked.map(({ plant }) => plant.id),
        { type: 'note', kind, day: todayHere(), text: '' },
        doneWords(kind, picked),
      ),
    );
  const finishToday = () =>
    send(() => finishWork(waiting, logLineOf, todayHere(), `Today’s work is done on ${forWhom(picked)}.`));

  return (
    <section ref={bar} tabIndex={-1} className={styles.bar} aria-label="Many at once">
      <div className={styles.count}>
        <p aria-live="polite">
          <b>{picked.length} chosen</b>
        </p>
        <button
          type="button"
          className={buttons.icon}
          onClick={() => onChoose(new Set(rows.map(({ plant }) => plant.id)))}
        >
          All {rows.length} shown
        </button>
        <button type="button" className={buttons.icon} onClick={() => onChoose(new Set())}>
          None
        </button>
        <button type="button" className={`${buttons.icon} ${styles.close}`} onClick={onClose}>
          <Icon name="close" /> <span>Finish</span>
        </button>
      </div>
      <div className={styles.acts}>
        {AT_ONCE.map(({ kind, words, icon }) => (
          <button
            key={kind}
            type="button"
            className={`${buttons.quiet} ${styles.atOnce}`}
            disabled={none}
            onClick={() => writeDown(kind)}
          >
            <Icon name={icon} /> {words}
          </button>
        ))}
        <button type="button" className={buttons.quiet} disabled={none} onClick={() => setOpen(true)}>
          <Icon name="edit" /> Write down…
        </button>
        <button
          type="button"
          className={buttons.quiet}
          disabled={none || waiting.length === 0}
          onClick={finishToday}
        >
          <Icon name="keep" /> Work done
          <span className="only-heard"> today</span>
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
      {open && <RecordSheet picked={picked} onClose={() => setOpen(false)} />}
    </section>
  );
}
