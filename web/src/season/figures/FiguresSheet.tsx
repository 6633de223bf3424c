import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlantKind } from '../../../../core/plant.ts';
import { defaultsQuery } from '../../api/season.ts';
import { Fault } from '../../parts/Fault.tsx';
import Sheet from '../../parts/Sheet.tsx';
import { KIND_WORDS } from '../../words/plant-words.ts';
import styles from './FigureMakeup.module.css';
import { FigureRow } from './FigureRow.tsx';

/** The figures that a kind's plans rest on, each with its standing, to be changed one by one. */
export default function FiguresSheet({ kind, onClose }: { kind: PlantKind; onClose: () => void }) {
  const { data, error, refetch } = useQuery(defaultsQuery);
  const [changing, change] = useState<string | null>(null);
  const groups = [
    { name: KIND_WORDS[kind], figures: data?.figures.filter((one) => one.kind === kind) ?? [] },
    { name: 'All kinds alike', figures: data?.figures.filter((one) => one.kind === null) ?? [] },
  ];
  return (
    <Sheet title="Figures that plans rest on" onClose={onClose}>
      <p>
        Your own figure goes before the default, for every plant of the kind. Your records go on counting
        beside it.
      </p>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      {groups.map(({ name, figures }) => (
        <section key={name} className={styles.kind}>
          <h3>{name}</h3>
          <ul className={styles.figures}>
            {figures.map((figure) => (
              <FigureRow
                key={figure.key}
                editable={figure}
                isOpen={changing === figure.key}
                onOpen={() => change(figure.key)}
                onClose={() => change(null)}
              />
            ))}
          </ul>
        </section>
      ))}
    </Sheet>
  );
}
