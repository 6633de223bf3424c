import { Link } from 'wouter';
import { EXTRA_MEANINGS, EXTRA_MEASURES, EXTRA_NAMES } from '../measures/extra-readings.ts';
import { MEANINGS, PLUS_MINUS_MEANING } from '../measures/meanings.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { MEASURES } from '../measures/reading.ts';
import forms from '../parts/forms.module.css';
import { chooseShade, SHADES, type Shade, shadeChoice } from '../parts/shade.ts';
import { ACCEPT_MEANING, SURE_MEANING } from '../photo/outline-words.ts';
import { HowToPhotograph } from '../photos/HowToPhotograph.tsx';
import { TURNED_MEANINGS } from '../plan/turned-meanings.ts';
import { TURNED_MEASURES, TURNED_NAMES } from '../plan/turned-readings.ts';
import styles from './AboutScreen.module.css';
import { Glossary } from './Glossary.tsx';
import { ReaderChoices } from './ReaderChoices.tsx';

const SHADE_WORDS: Record<Shade, string> = {
  device: 'As the device wishes',
  light: 'Light',
  dark: 'Dark',
};

/** How to photograph, what is measured, what to take care of, and light or dark. */
export default function AboutScreen() {
  const shade = shadeChoice.useValue();
  return (
    <div className={styles.screen}>
      <h1>How and cautions</h1>
      <section>
        <h2>How to photograph</h2>
        <HowToPhotograph />
        <p>
          <Link href="/stands">Set up the stand</Link> once: five minutes, and every photo is brought into the
          same frame. <Link href="/stand-sheet">The stand sheet</Link> gives frame and millimetres by itself.
        </p>
      </section>
      <section>
        <h2>Take care</h2>
        <ul className={styles.list}>
          <li>
            <b>A cut cannot be undone.</b> Look at the plant, not only at the mark on the photo, and cut above
            a leaf joint.
          </li>
          <li>
            <b>Knife.</b> Keep the blade clean and sharp, and cut away from your hand.
          </li>
          <li>
            <b>Sap.</b> It can irritate the skin. Wear gloves if yours is tender, and wash after the work.
          </li>
          <li>
            <b>Pets.</b> Pelargoniums are poisonous to cats and dogs. Clear the cuttings away.
          </li>
          <li>
            <b>Sprays and feeds.</b> Read the label and keep to it. What may be used, and how, the law of your
            place decides. Rondure gives no advice on them.
          </li>
          <li>
            <b>Advice is advice.</b> Weeks and rules are common practice unless a source is named. Your own
            records come first.
          </li>
        </ul>
      </section>
      <Glossary />
      <section>
        <h2>What is measured</h2>
        <dl className={styles.meanings}>
          <div>
            <dt>Outline</dt>
            <dd>
              {SURE_MEANING} Zones that may be leaf or not are hatched; tap one and answer, or mend the
              outline with a stroke.
            </dd>
          </div>
          <div>
            <dt>The outline is right</dt>
            <dd>{ACCEPT_MEANING}</dd>
          </div>
          {MEASURES.map((measure) => (
            <div key={measure}>
              <dt>{MEASURE_NAMES[measure]}</dt>
              <dd>
                {MEANINGS[measure].says} {MEANINGS[measure].measured} {MEANINGS[measure].best}{' '}
                <span className={styles.source}>{MEANINGS[measure].source}</span>
              </dd>
            </div>
          ))}
          {TURNED_MEASURES.map((measure) => (
            <div key={measure}>
              <dt>{TURNED_NAMES[measure]}</dt>
              <dd>
                {TURNED_MEANINGS[measure].says} {TURNED_MEANINGS[measure].measured}{' '}
                {TURNED_MEANINGS[measure].best}{' '}
                <span className={styles.source}>{TURNED_MEANINGS[measure].source}</span>
              </dd>
            </div>
          ))}
          {EXTRA_MEASURES.map((extra) => (
            <div key={extra}>
              <dt>{EXTRA_NAMES[extra]}</dt>
              <dd>
                {EXTRA_MEANINGS[extra].says} {EXTRA_MEANINGS[extra].measured} {EXTRA_MEANINGS[extra].best}{' '}
                <span className={styles.source}>{EXTRA_MEANINGS[extra].source}</span>
              </dd>
            </div>
          ))}
        </dl>
        <p>Plus-minus: {PLUS_MINUS_MEANING}</p>
        <p>
          What cannot be known is called “not known”, with the reason. Everything can be corrected: a photo’s
          day and turn, the rim, stops and notes. What you remove can be taken back with Undo.
        </p>
      </section>
      <section>
        <h2>Clock and sides</h2>
        <p>
          In a photo, 12 o’clock is on top and 3 o’clock at the right. Left and right are yours as you look at
          the photo. Seen from above, the clock has the mark on the rim at 6; the pot is turned clockwise when
          the mark goes from 6 to 9.
        </p>
      </section>
      <section>
        <h2>Where your photos are</h2>
        <p>
          To take photos with a phone, let it in under <Link href="/phones">Phones</Link>, at the desk.
        </p>
        <p>
          Everything stays on your own machine. Nothing is sent anywhere. Place and camera data are taken off
          the pictures shown here.
        </p>
        <p>
          Backups are made by themselves. When, where, and how to go back stands under{' '}
          <Link href="/keeping">Keeping</Link>, at the desk.
        </p>
      </section>
      <ReaderChoices />
      <section>
        <h2>Light or dark</h2>
        <fieldset className={forms.choices}>
          <legend className="only-heard">Light or dark</legend>
          {SHADES.map((one) => (
            <label key={one}>
              <input type="radio" name="shade" checked={shade === one} onChange={() => chooseShade(one)} />
              {SHADE_WORDS[one]}
            </label>
          ))}
        </fieldset>
      </section>
    </div>
  );
}
