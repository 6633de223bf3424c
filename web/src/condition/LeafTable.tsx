import type { Day } from '../../../core/day/day.ts';
import type { PlantLeaf } from '../../../server/schemas/condition.ts';
import fold from '../parts/twin.module.css';
import { dayWords } from '../words/day-words.ts';
import { shareWords } from './condition-words.ts';

/** Yellow and brown leaf of every judged sitting, newest first. */
export function LeafTable({ history, today }: { history: PlantLeaf['history']; today: Day }) {
  if (history.length === 0) return null;
  return (
    <details className={fold.twin}>
      <summary>All sittings</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Yellow</th>
            <th scope="col">Brown</th>
            <th scope="col">Held against</th>
          </tr>
        </thead>
        <tbody>
          {history.toReversed().map(({ sittingId, day, yellow, brown, against, isComparable }) => (
            <tr key={sittingId}>
              <td>{dayWords(day, today)}</td>
              <td>{shareWords(yellow)}</td>
              <td>{shareWords(brown)}</td>
              <td>{!isComparable ? 'not compared' : against === 'own' ? 'its own leaf' : 'what is usual'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
