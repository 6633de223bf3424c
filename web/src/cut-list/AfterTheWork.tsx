import { Link } from 'wouter';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { saveEntry } from '../api/diary.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { announce } from '../parts/undo.ts';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { countWords, STOP_WORDS } from '../words/plant-words.ts';
import styles from './BallSection.module.css';
import { type ListedCut, progressOf } from './listed-cut.ts';
import { photographPath } from './photograph-path.ts';

/** After the last cut: the photo that planned and done are compared by, and the stop in the plant's record. */
export function AfterTheWork({
  page,
  list,
  cuts,
}: {
  page: PlantPage;
  list: CutList;
  cuts: readonly ListedCut[];
}) {
  const { busy, fault, send } = useSending();
  const today = todayHere();
  const { open, done } = progressOf(cuts);
  const over = open === 0 && done > 0;
  const depth = cuts.some(({ state, stop }) => state === 'done' && stop === 'deep') ? 'deep' : 'tip';
  const written = page.stops.some(({ day }) => day >= list.day);
  const write = () =>
    send(async () => {
      await saveEntry(page.plant.id, 'stops', null, {
        day: today,
        depth,
        note: `${countWords(done, 'cut')} of the cut list.`,
      });
      announce(`The ${STOP_WORDS[depth].toLowerCase()} is written down for today.`);
    });
  return (
    <div className={styles.section}>
      <h3>{over ? 'The list is worked through' : 'After the work'}</h3>
      <p>
        Photograph it at the same {list.from === 'turned' ? 'turns' : 'turn'}, at once or within two weeks:
        Rondure then compares planned with done.
        {done === 0 && ' Tick off first what you cut: by that it knows which photos show the plant after.'}
      </p>
      <div className={buttons.row}>
        {(done > 0 || list.day !== today) && (
          <Link href={photographPath(list, today)} className={over ? buttons.button : buttons.quiet}>
            <Icon name="camera" /> Photograph after the work
          </Link>
        )}
        {done > 0 && !written && (
          <button type="button" className={buttons.quiet} disabled={busy} onClick={write}>
            <Icon name="shorten" /> Write down the {STOP_WORDS[depth].toLowerCase()}
          </button>
        )}
      </div>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
