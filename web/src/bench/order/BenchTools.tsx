import { PLANT_KINDS, type PlantKind } from '../../../../core/plant.ts';
import { Field } from '../../parts/Field.tsx';
import { KIND_WORDS } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';
import styles from './BenchTools.module.css';
import { type BenchView, isLate, NO_SHOW, type Order } from './bench-order.ts';

const ORDER_WORDS: Record<Order, string> = {
  need: 'What they need',
  late: 'What is late',
  show: 'Show',
  kind: 'Kind',
  name: 'Name',
};

/** Finds plants on a bench with many: by name, kind, show and what is late, in an order of choice. */
export function BenchTools({
  rows,
  view,
  showNames,
  onChange,
}: {
  rows: readonly BenchRow[];
  view: BenchView;
  showNames: ReadonlyMap<string, string>;
  onChange: (change: Partial<BenchView>) => void;
}) {
  const kinds = PLANT_KINDS.filter((kind) => rows.some(({ plant }) => plant.kind === kind));
  const late = rows.filter(isLate).length;
  return (
    <search className={styles.tools} aria-label="Find plants">
      <Field label="Name or variety">
        {(wiring) => (
          <input
            {...wiring}
            type="search"
            value={view.name}
            onChange={(event) => onChange({ name: event.target.value })}
          />
        )}
      </Field>
      <Field label="Kind">
        {(wiring) => (
          <select
            {...wiring}
            value={view.kind}
            onChange={(event) => onChange({ kind: event.target.value as PlantKind | '' })}
          >
            <option value="">Every kind</option>
            {kinds.map((kind) => (
              <option key={kind} value={kind}>
                {KIND_WORDS[kind]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Show">
        {(wiring) => (
          <select
            {...wiring}
            value={view.showId}
            onChange={(event) => onChange({ showId: event.target.value })}
          >
            <option value="">Any or none</option>
            {[...showNames].map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
            <option value={NO_SHOW}>For no show</option>
          </select>
        )}
      </Field>
      <Field label="In order of">
        {(wiring) => (
          <select
            {...wiring}
            value={view.order}
            onChange={(event) => onChange({ order: event.target.value as Order })}
          >
            {Object.entries(ORDER_WORDS).map(([order, words]) => (
              <option key={order} value={order}>
                {words}
              </option>
            ))}
          </select>
        )}
      </Field>
      <label className={styles.late}>
        <input
          type="checkbox"
          checked={view.lateOnly}
          onChange={(event) => onChange({ lateOnly: event.target.checked })}
        />
        Only what is late ({late})
      </label>
    </search>
  );
}
