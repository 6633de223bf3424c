import { useState } from 'react';
import type { Plant } from '../../../server/schemas/plant.ts';
import buttons from '../parts/buttons.module.css';
import { Choices } from '../parts/Choices.tsx';
import { Icon } from '../parts/Icon.tsx';
import styles from './TurnedScreen.module.css';
import { takingChoice } from './taking-choice.ts';

const PAPERS = [
  { value: 'A4', words: 'A4' },
  { value: 'Letter', words: 'Letter' },
] as const;

/** The printed ring that tells each photo's turn by itself, made to the pot's rim. */
export function CollarOffer({ plant }: { plant: Plant }) {
  const choice = takingChoice.useValue();
  const [paper, setPaper] = useState<'A4' | 'Letter'>('A4');
  return (
    <section aria-labelledby="collar-name" className={styles.part}>
      <h2 id="collar-name">The turn collar</h2>
      <p>
        A paper band round the pot’s rim with coded marks. Rondure reads the turn of each photo from it, so
        nothing has to be told and the shots may come in any order.
      </p>
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={choice.collar}
          onChange={(event) => takingChoice.write({ ...choice, collar: event.target.checked })}
        />
        The pot wears its collar: read the turns from it
      </label>
      {plant.rimMm === null ? (
        <p>It is printed to the pot’s measure: give the rim under Details first.</p>
      ) : (
        <>
          <Choices legend="Paper" options={PAPERS} chosen={paper} onChoose={setPaper} />
          <div className={buttons.row}>
            <a
              href={`/api/turn-collar.pdf?rimMm=${plant.rimMm}&paper=${paper}`}
              className={buttons.quiet}
              target="_blank"
              rel="noreferrer"
            >
              <Icon name="print" /> The collar for {plant.rimMm} mm, PDF
            </a>
            <a
              href={`/api/turn-collar.svg?rimMm=${plant.rimMm}&paper=${paper}`}
              className={buttons.quiet}
              target="_blank"
              rel="noreferrer"
            >
              <Icon name="sheet" /> SVG
            </a>
          </div>
          <p className={styles.sub}>Print it at 100 %: the printed line must measure 100 mm.</p>
        </>
      )}
    </section>
  );
}
