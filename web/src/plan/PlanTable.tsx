import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import { placeWords } from '../../../core/turned/place-words.ts';
import styles from '../parts/twin.module.css';
import { reachAt } from './plan-shape.ts';
import { reachWords } from './plan-words.ts';

/** The twelve hours in the order of the clock, from the mark on. */
const HOURS = Array.from({ length: 12 }, (_, k) => (360 - 30 * k) % 360);

/** The plan as a table, for whoever reads figures or hears the screen. */
export function PlanTable({ reach }: { reach: readonly PlanReach[] }) {
  return (
    <details className={styles.twin}>
      <summary>The plan as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Side</th>
            <th scope="col">Reach</th>
            <th scope="col">Known</th>
          </tr>
        </thead>
        <tbody>
          {HOURS.map((azimuthDeg) => {
            const one = reachAt(reach, azimuthDeg);
            return (
              one && (
                <tr key={azimuthDeg}>
                  <th scope="row">{placeWords(azimuthDeg)}</th>
                  <td>{reachWords(one)}</td>
                  <td>{one.measured ? 'measured' : 'filled in'}</td>
                </tr>
              )
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
