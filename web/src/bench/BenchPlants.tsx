import type { ComponentType } from 'react';
import { NeedMark } from '../parts/NeedMark.tsx';
import { todayHere } from '../words/day-words.ts';
import styles from './BenchScreen.module.css';
import type { RowGroup } from './need-groups.ts';
import { PlantCard } from './PlantCard.tsx';
import type { PlantLine } from './PlantRow.tsx';

/** The plants under their headings, as cards or, with a `Line`, close together. */
export function BenchPlants({
  groups,
  Line,
  chosen,
  onChoose,
}: {
  groups: readonly RowGroup[];
  Line: ComponentType<PlantLine> | null;
  /** `null` while plants are not being chosen. */
  chosen: ReadonlySet<string> | null;
  onChoose: (chosen: ReadonlySet<string>) => void;
}) {
  const today = todayHere();
  const toggle = (id: string) => {
    const next = new Set(chosen);
    if (!next.delete(id)) next.add(id);
    onChoose(next);
  };
  return groups.map((group) => {
    const isLarge = group.urgency === 3;
    return (
      <section key={group.key} className={styles.group}>
        <h2 className={styles.groupName}>
          <GroupName group={group} />
        </h2>
        <ul className={Line ? styles.rows : styles.cards} data-large={isLarge || undefined}>
          {group.rows.map((row) => (
            <li key={row.plant.id} data-choosing={chosen !== null || undefined}>
              {Line ? <Line row={row} today={today} /> : <PlantCard row={row} large={isLarge} />}
              {chosen !== null && (
                <label className={styles.choose}>
                  <input
                    type="checkbox"
                    checked={chosen.has(row.plant.id)}
                    onChange={() => toggle(row.plant.id)}
                  />
                  <span className="only-heard">{row.plant.name}</span>
                </label>
              )}
            </li>
          ))}
        </ul>
      </section>
    );
  });
}

function GroupName({ group: { urgency, words, rows } }: { group: RowGroup }) {
  if (urgency !== null) return <NeedMark urgency={urgency} />;
  return (
    <span>
      {words} <small className={styles.groupCount}>{rows.length}</small>
    </span>
  );
}
