import type { CutList } from '../../../server/schemas/cuts.ts';
import { heightWords, placeWordsOf, takeOffWords } from '../cut-list/cut-words.ts';
import { isPlanned, type ListedCut } from '../cut-list/listed-cut.ts';
import { countWords, STOP_WORDS } from '../words/plant-words.ts';
import styles from './BenchCard.module.css';

/** More cuts than fit beside photo and dates on one page; the cut list's own page holds all. */
const MOST_CUTS = 10;

/** The cuts still to be made, with boxes to tick. */
export function CardCuts({ cuts, list }: { cuts: readonly ListedCut[]; list: CutList }) {
  const open = cuts.filter((cut) => isPlanned(cut) && cut.state === 'open');
  const caution = list.advice.find((one) => one.caution);
  if (open.length === 0) return <p>No cut is left to make.</p>;
  return (
    <section aria-labelledby="card-cuts" className={styles.cuts}>
      <h3 id="card-cuts">Cuts</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">Done</th>
            <th scope="col">No.</th>
            <th scope="col">{list.from === 'turned' ? 'Clock, mark at 6' : 'Clock in the photo'}</th>
            <th scope="col">Off</th>
            <th scope="col">Stop</th>
            <th scope="col">Height</th>
          </tr>
        </thead>
        <tbody>
          {open.slice(0, MOST_CUTS).map((cut) => (
            <tr key={cut.id}>
              <td>
                <span className={styles.box} />
              </td>
              <td>{cut.number}</td>
              <td>{placeWordsOf(cut)}</td>
              <td>{takeOffWords(cut)}</td>
              <td>{STOP_WORDS[cut.stop]}</td>
              <td>{heightWords(cut) ?? 'not known'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {open.length > MOST_CUTS && (
        <p>{countWords(open.length - MOST_CUTS, 'further cut')} on the printed cut list.</p>
      )}
      {caution && (
        <p>
          <b>▲ Take care.</b> {caution.words}
        </p>
      )}
    </section>
  );
}
