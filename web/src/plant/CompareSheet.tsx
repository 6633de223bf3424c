import { useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { Field } from '../parts/Field.tsx';
import Sheet from '../parts/Sheet.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { ComparePicture } from './ComparePicture.tsx';
import styles from './CompareSheet.module.css';
import { type Leaf, leavesOf, measuredBefore, turnWords } from './leafing.ts';

/** Two photos over one another, the earlier one as clear as the slider says. */
export default function CompareSheet({
  page,
  leaf,
  onClose,
}: {
  page: PlantPage;
  leaf: Leaf;
  onClose: () => void;
}) {
  const leaves = leavesOf(page.sittings);
  const other =
    measuredBefore(page.sittings, leaf) ?? leaves.find(({ view }) => view.id !== leaf.view.id) ?? leaf;
  const [underId, setUnder] = useState(leaf.view.id);
  const [overId, setOver] = useState(other.view.id);
  const [strength, setStrength] = useState(50);
  const under = leaves.find(({ view }) => view.id === underId);
  const over = leaves.find(({ view }) => view.id === overId);
  const today = todayHere();
  const words = ({ sitting, view }: Leaf) =>
    [dayWords(sitting.day, today), view.turnDeg ? turnWords(view.turnDeg) : null].filter(Boolean).join(', ');

  return (
    <Sheet title="Two over one another" wide onClose={onClose}>
      <div className={styles.desk}>
        {under && over ? (
          <ComparePicture under={under.view} over={over.view} strength={strength / 100} />
        ) : (
          <p>One of the two photos is gone. Choose again.</p>
        )}
        <div className={styles.choices}>
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
          <Field label="How much of the top one" help={`${strength} %`}>
            {({ className: _, ...wiring }) => (
              <input
                {...wiring}
                className={styles.slider}
                type="range"
                min="0"
                max="100"
                step="5"
                value={strength}
                onChange={(event) => setStrength(Number(event.target.value))}
              />
            )}
          </Field>
        </div>
      </div>
    </Sheet>
  );
}
