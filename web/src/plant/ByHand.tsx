import { correctView } from '../api/corrections.ts';
import { takeStrokesAway } from '../api/mending.ts';
import { putRim } from '../api/rim.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './ByHand.module.css';
import { byHand, type HandCorrection } from './by-hand.ts';
import type { Leaf } from './leafing.ts';

/** What of this photo was set by hand, each with its way back. */
export function ByHand({ plantId, leaf }: { plantId: string; leaf: Leaf }) {
  const { busy, fault, send } = useSending();
  const corrections = byHand(leaf);
  if (corrections.length === 0) return null;
  const { view } = leaf;
  const words: Readonly<Record<HandCorrection, string>> = {
    rim: 'Rim and axis',
    outline: `Outline, ${countWords(view.strokes.length, 'stroke')}`,
    turn: 'Turn',
    day: 'Day',
  };
  const takeBack: Readonly<Record<HandCorrection, () => Promise<void>>> = {
    rim: () => putRim(plantId, view, null, 'The rim is as it was found.'),
    outline: () => takeStrokesAway(plantId, view, 'The strokes are taken away.'),
    turn: () => correctView(plantId, leaf, { turnDeg: null }),
    day: () => correctView(plantId, leaf, { day: null }),
  };
  return (
    <section aria-label="Set by hand" className={styles.hand}>
      <b>Set by hand:</b>
      <ul>
        {corrections.map((what) => (
          <li key={what}>
            {words[what]}
            <button
              type="button"
              className={buttons.icon}
              disabled={busy}
              onClick={() => send(takeBack[what])}
            >
              <Icon name="undo" size={18} /> <span className="only-heard">{TAKE_BACK_WORDS[what]}</span>
            </button>
          </li>
        ))}
      </ul>
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}

const TAKE_BACK_WORDS: Readonly<Record<HandCorrection, string>> = {
  rim: 'Take the rim as it was found',
  outline: 'Take all strokes away',
  turn: 'Take the turn back',
  day: 'Take the camera’s day',
};
