import { useId } from 'react';
import { placeWords } from '../../../core/turned/place-words.ts';
import { placeAt } from '../plan/azimuth.ts';
import styles from './SideChoice.module.css';

const EIGHTHS = Array.from({ length: 8 }, (_, k) => 45 * k);

/** One of eight sides of the plant, chosen on a drawing from above with the mark at 6 o'clock. */
export function SideChoice({
  legend,
  chosenDeg,
  onChoose,
}: {
  legend: string;
  chosenDeg: number | null;
  onChoose: (azimuthDeg: number) => void;
}) {
  const name = useId();
  return (
    <fieldset className={styles.choice}>
      <legend>{legend}</legend>
      <div className={styles.plan}>
        <svg viewBox="-160 -160 320 320" className={styles.drawing} aria-hidden="true">
          <circle r="66" />
          <circle cx="0" cy="66" r="8" className={styles.mark} />
          <text y="46">mark</text>
        </svg>
        {EIGHTHS.map((azimuthDeg) => {
          const [x, y] = placeAt(azimuthDeg, 122);
          return (
            <label
              key={azimuthDeg}
              className={styles.side}
              style={{ left: `${50 + x / 3.2}%`, top: `${50 + y / 3.2}%` }}
            >
              <input
                type="radio"
                name={name}
                checked={chosenDeg !== null && Math.abs(chosenDeg - azimuthDeg) < 0.01}
                onChange={() => onChoose(azimuthDeg)}
              />
              {placeWords(azimuthDeg).replace(' o’clock', '').replace('half past ', '½ past ')}
              {!placeWords(azimuthDeg).startsWith('half') && <span className="only-heard"> o’clock</span>}
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}
