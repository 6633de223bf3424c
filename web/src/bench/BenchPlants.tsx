import { NeedMark } from '../parts/NeedMark.tsx';
import styles from './BenchScreen.module.css';
import { type BenchRow, groupedRows, type Order, type RowGroup } from './order/bench-order.ts';
import { PlantCard } from './PlantCard.tsx';
import { PlantRow } from './PlantRow.tsx';

/** The plants under their headings: as cards when they are few, as lines close together when they are many. */
export function BenchPlants({
  rows,
  order,
  close,
  showNames,
  chosen,
  onChoose,
}: {
  rows: readonly BenchRow[];
  order: Order;
  close: boolean;
  showNames: ReadonlyMap<string, string>;
  /** `null` while plants are not being chosen. */
  chosen: ReadonlySet<string> | null;
  onChoose: (chosen: ReadonlySet<string>) => void;
}) {
  const toggle = (id: string) => {
    const next = new Set(chosen);
    if (!next.delete(id)) next.add(id);
    onChoose(next);
  };
  return groupedRows(rows, order, showNames).map((group) => {
    const isLarge = group.urgency === 3;
    return (
      <section key={group.key} className={styles.group}>
        <h2 className={styles.groupName}>
          <GroupName group={group} />
        </h2>
        <ul className={close ? styles.rows : styles.cards} data-large={isLarge || undefined}>
          {group.rows.map((row) => (
            <li key={row.plant.id} data-choosing={chosen !== null || undefined}>
              {close ? <PlantRow row={row} /> : <PlantCard row={row} large={isLarge} />}
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
