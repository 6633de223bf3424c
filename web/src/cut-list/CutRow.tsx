import { useId, useState } from 'react';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';
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
  const { state, chosen, number } = cut;
  const hour = hourOf(cut);
  const { figure, unit } = takeOffParts(cut);
  const height = heightWords(cut);
  const refused = marking.fault?.cutId === cut.id ? marking.fault.fault : null;

  async function change(to: ListedCut['state'], done: string) {
    // Done is done, chosen or not: it counts in what comes after.
    const kept = await marking.mark(cut, to === 'done' ? { state: to, chosen: true } : { state: to }, done);
    if (kept) onHold(null);
  }

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
          <b>{figure}</b>
          <span className={styles.unit}>{unit} off</span>
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
      <div className={styles.acts}>
        <button
          type="button"
          className={styles.done}
          aria-pressed={state === 'done'}
          aria-describedby={whichId}
          onClick={() =>
            state === 'done'
              ? change('open', `Cut ${number} is open again.`)
              : change('done', `Cut ${number} is done.`)
          }
        >
          <span className={styles.box} aria-hidden="true">
            {state === 'done' && <Icon name="keep" size={28} />}
          </span>
          Done
        </button>
        <button
          type="button"
          className={styles.skip}
          aria-pressed={state === 'skipped'}
          aria-describedby={whichId}
          onClick={() =>
            state === 'skipped'
              ? change('open', `Cut ${number} is open again.`)
              : change('skipped', `Cut ${number} is skipped.`)
          }
        >
          {state === 'skipped' ? 'Skipped' : 'Skip'}
        </button>
      </div>
      <div className={styles.more}>
        <label className={styles.chosen}>
          <input
            type="checkbox"
            checked={chosen}
            disabled={state === 'done'}
            aria-describedby={whichId}
            onChange={() =>
              marking.mark(
                cut,
                { chosen: !chosen },
                chosen ? `Cut ${number} is not chosen.` : `Cut ${number} is chosen.`,
              )
            }
          />
          Chosen
        </label>
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
          aria-expanded={opened === 'note'}
          aria-label={cut.note ? 'Change the note' : 'Write a note'}
          onClick={() => open(opened === 'note' ? null : 'note')}
        >
          <Icon name="edit" /> Note
        </button>
      </div>
      {opened === 'note' && <CutNote cut={cut} marking={marking} onClose={() => open(null)} />}
      {refused !== null && <Fault fault={refused} />}
      {opened === 'why' && <CutWhy cut={cut} />}
    </li>
  );
}
