import { SURENESS_WORDS } from '../words/need-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import { heightWords, placeWordsOf, takeOffWords } from './cut-words.ts';
import { isPlanned, type ListedCut } from './listed-cut.ts';
import styles from './PrintedList.module.css';

/** The cuts of one pass with boxes to tick and room for a word. */
export function PrintedCuts({
  name,
  cuts,
  turned,
}: {
  name: string | null;
  cuts: readonly ListedCut[];
  turned: boolean;
}) {
  return (
    <table className={styles.cuts}>
      {name && <caption>{name}</caption>}
      <thead>
        <tr>
          <th scope="col">Done</th>
          <th scope="col">No.</th>
          <th scope="col">{turned ? 'Clock, mark at 6' : 'Clock in the photo'}</th>
          <th scope="col">Off</th>
          <th scope="col">Stop</th>
          <th scope="col">Height of the cut</th>
          <th scope="col">How sure</th>
          <th scope="col">Note</th>
        </tr>
      </thead>
      <tbody>
        {cuts.map((cut) => (
          <tr key={cut.id} data-left={!isPlanned(cut) || undefined}>
            <td>
              <span className={styles.box}>{BOX[cut.state]}</span>
            </td>
            <td className={styles.strong}>{cut.number}</td>
            <td className={styles.strong}>{placeWordsOf(cut)}</td>
            <td className={styles.strong}>{takeOffWords(cut)}</td>
            <td>{STOP_WORDS[cut.stop]}</td>
            <td>{heightWords(cut) ?? 'not known'}</td>
            <td>{SURENESS_WORDS[cut.sure]}</td>
            <td className={styles.note}>{noteOf(cut)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const BOX: Record<ListedCut['state'], string> = { open: '', done: '✓', skipped: '–' };

function noteOf({ state, chosen, note }: ListedCut): string {
  const left = state === 'skipped' ? 'Skipped. ' : chosen ? '' : 'Not chosen. ';
  return `${left}${note}`;
}
