import { useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Days } from '../api/sittings.ts';
import buttons from '../parts/buttons.module.css';
import { Choices } from '../parts/Choices.tsx';
import { Field } from '../parts/Field.tsx';
import Sheet from '../parts/Sheet.tsx';
import { type Leaf, leavesOf, measuredBefore, turnWords } from '../plant/leafing.ts';
import { onDay, usePageWith } from '../plant/use-page-with.ts';
import { dayWords, shortDayWords, todayHere } from '../words/day-words.ts';
import { CompareChanges } from './CompareChanges.tsx';
import { ComparePicture, type CompareWay } from './ComparePicture.tsx';
import styles from './CompareSheet.module.css';
import { CompareSide } from './CompareSide.tsx';
import { comparePairs, daysOfPairs } from './pairs.ts';

type Shown = CompareWay | 'beside';
const WAYS: readonly { readonly value: Shown; readonly words: string }[] = [
  { value: 'wipe', words: 'Draw across' },
  { value: 'blend', words: 'See through' },
  { value: 'beside', words: 'Side by side' },
];

/** Two photos of two days: one drawn across the other, mixed, or side by side, and what changed between them. */
export default function CompareSheet({
  page: known,
  leaf,
  earlier: wanted = null,
  onClose,
}: {
  page: PlantPage;
  leaf: Leaf;
  /** The photo to compare with; without one the last before. */
  earlier?: Leaf | null;
  onClose: () => void;
}) {
  const [added, add] = useState<readonly Days[]>([]);
  const { page } = usePageWith(known, [...daysOfPairs(known), ...added]);
  const leaves = leavesOf(page.sittings);
  const other =
    wanted ??
    measuredBefore(page.sittings, leaf) ??
    leaves.find(({ view }) => view.id !== leaf.view.id) ??
    leaf;
  const [underId, setUnder] = useState(leaf.view.id);
  const [overId, setOver] = useState(other.view.id);
  const [way, setWay] = useState<Shown>('wipe');
  const [share, setShare] = useState(50);
  const [outlines, setOutlines] = useState(true);
  const under = leaves.find(({ view }) => view.id === underId);
  const over = leaves.find(({ view }) => view.id === overId);
  const today = todayHere();
  const words = ({ sitting, view }: Leaf) =>
    [dayWords(sitting.day, today), view.turnDeg ? turnWords(view.turnDeg) : null].filter(Boolean).join(', ');
  const [earlier, later] =
    under && over && under.sitting.day < over.sitting.day ? [under, over] : [over, under];

  return (
    <Sheet title="Two photos compared" wide onClose={onClose}>
      <div className={styles.desk}>
        <div className={styles.shown}>
          {!under || !over ? (
            <p>One of the two photos is gone. Choose again.</p>
          ) : way === 'beside' ? (
            <CompareSide earlier={earlier as Leaf} later={later as Leaf} outlines={outlines} />
          ) : (
            <ComparePicture
              under={under.view}
              over={over.view}
              way={way}
              share={share / 100}
              outlines={outlines}
            />
          )}
          {way !== 'beside' && (
            <input
              className={styles.slider}
              type="range"
              aria-label={way === 'wipe' ? 'How far the top one is drawn across' : 'How clear the top one is'}
              aria-valuetext={`${share} %`}
              min="0"
              max="100"
              step="5"
              value={share}
              onChange={(event) => setShare(Number(event.target.value))}
            />
          )}
        </div>
        <div className={styles.choices}>
          <Choices legend="How" legendHidden options={WAYS} chosen={way} onChoose={setWay} />
          <div className={buttons.row}>
            {comparePairs(page).map((pair) => (
              <button
                key={pair.name}
                type="button"
                className={buttons.quiet}
                aria-pressed={underId === pair.later.view.id && overId === pair.earlier.view.id}
                onClick={() => {
                  setUnder(pair.later.view.id);
                  setOver(pair.earlier.view.id);
                }}
              >
                {pair.name}
              </button>
            ))}
          </div>
          {(
            [
              ['Below (full line)', underId, setUnder],
              ['On top (broken line)', overId, setOver],
            ] as const
          ).map(([label, chosen, choose]) => (
            <Field key={label} label={label}>
              {(wiring) => (
                <select {...wiring} value={chosen} onChange={(event) => choose(event.target.value)}>
                  {leaves.map((one) => (
                    <option key={one.view.id} value={one.view.id}>
                      {words(one)}
                    </option>
                  ))}
                </select>
              )}
            </Field>
          ))}
          {page.earlier.length > 0 && (
            <Field label="Photos of an earlier day, to choose from">
              {(wiring) => (
                <select
                  {...wiring}
                  value=""
                  onChange={({ target }) => target.value && add([...added, onDay(target.value)])}
                >
                  <option value="">Choose a day.</option>
                  {page.earlier.map(({ id, day }) => (
                    <option key={id} value={day}>
                      {dayWords(day, today)}
                    </option>
                  ))}
                </select>
              )}
            </Field>
          )}
          <label className={styles.tick}>
            <input
              type="checkbox"
              checked={outlines}
              onChange={(event) => setOutlines(event.target.checked)}
            />
            Both outlines
          </label>
        </div>
      </div>
      {earlier && later && (
        <section aria-label="What changed" className={styles.table}>
          <CompareChanges
            earlier={earlier.view.report}
            later={later.view.report}
            days={[shortDayWords(earlier.sitting.day), shortDayWords(later.sitting.day)]}
          />
        </section>
      )}
    </Sheet>
  );
}
