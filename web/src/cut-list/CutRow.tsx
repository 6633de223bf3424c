import { useId, useRef, useState } from 'react';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';
import { spokenFigure } from '../words/spoken-figure.ts';
import { CutActs } from './CutActs.tsx';
import { CutNote } from './CutNote.tsx';
import styles from './CutRow.module.css';
import { CutWhy } from './CutWhy.tsx';
import { cutTold, heightWords, hourOf, kindWords, placeWordsOf, takeOffParts } from './cut-words.ts';
import { HourDial } from './HourDial.tsx';
import type { ListedCut } from './listed-cut.ts';
import type { Marking } from './use-marking.ts';

/** One cut: hour and mm large enough for arm's length, and what can be done with it. */
export function CutRow({
  cut,
  turned,
  held,
  next,
  marking,
  onHold,
}: {
  cut: ListedCut;
  /** Whether its hour is seen from above, with the mark at 6. */
  turned: boolean;
  held: boolean;
  next: boolean;
  marking: Marking;
  onHold: (cutId: string | null) => void;
}) {
  const [opened, open] = useState<'why' | 'note' | null>(null);
  const whichId = useId();
  const noteButton = useRef<HTMLButtonElement>(null);
  const closeNote = () => {
    open(null);
    noteButton.current?.focus();
  };
  const { state, chosen, number } = cut;
  const hour = hourOf(cut);
  const { figure, unit } = takeOffParts(cut);
  const off = spokenFigure({ value: figure, plusMinus: null, unit });
  const height = heightWords(cut);
  const refused = marking.fault?.cutId === cut.id ? marking.fault.fault : null;

  return (
    <li
      className={styles.row}
      data-state={state}
      data-held={held || undefined}
      data-left={!chosen || undefined}
      aria-current={next ? 'step' : undefined}
    >
      <button
        type="button"
        className={styles.where}
        aria-label={`${cutTold(cut)} Show it on the drawing`}
        onClick={() => onHold(cut.id)}
      >
        <HourDial hour={hour} number={number} turned={turned} />
        {next && <span className={styles.next}>Next</span>}
        <span className={styles.big}>
          <b>{hour ?? '–'}</b>
          <span className={styles.unit}>o’clock</span>
        </span>
        <span className={styles.big}>
          <b>{off.value}</b>
          <span className={styles.unit}>{off.unit} off</span>
        </span>
      </button>
      <span id={whichId} className="only-heard">
        Cut {number} at {placeWordsOf(cut)}
      </span>
      <p className={styles.facts}>
        <b>{STOP_WORDS[cut.stop]}</b> on {kindWords(cut)}
        {height && <>, {height}</>}
        {cut.aboveShootPx !== null && <>, just above the side shoot</>}.{' '}
        <span className="only-heard">{STOP_MEANINGS[cut.stop]}</span>
      </p>
      {cut.note && opened !== 'note' && (
        <p className={styles.note}>
          <b>Note.</b> {cut.note}
        </p>
      )}
      <CutActs cut={cut} marking={marking} whichId={whichId} onSettled={() => onHold(null)}>
        <button
          type="button"
          className={styles.open}
          aria-describedby={whichId}
          aria-expanded={opened === 'why'}
          aria-label="Why, and how sure"
          onClick={() => open(opened === 'why' ? null : 'why')}
        >
          Why?
        </button>
        <button
          type="button"
          className={styles.open}
          aria-describedby={whichId}
          ref={noteButton}
          aria-expanded={opened === 'note'}
          aria-label={cut.note ? 'Change the note' : 'Write a note'}
          onClick={() => open(opened === 'note' ? null : 'note')}
        >
          <Icon name="edit" /> Note
        </button>
      </CutActs>
      {opened === 'note' && <CutNote cut={cut} marking={marking} onClose={closeNote} />}
      {refused !== null && <Fault fault={refused} />}
      {opened === 'why' && <CutWhy cut={cut} />}
    </li>
  );
}
