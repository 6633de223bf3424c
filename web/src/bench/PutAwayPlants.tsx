import type { Plant } from '../../../server/schemas/plant.ts';
import { bringPlantBack } from '../api/plants.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { useSending } from '../parts/use-sending.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './PutAwayPlants.module.css';

/** Plants kept but off the bench; each can come back. */
export function PutAwayPlants({ plants }: { plants: readonly Plant[] }) {
  const { busy, fault, send } = useSending();
  if (plants.length === 0) return null;
  return (
    <details className={styles.away}>
      <summary>{countWords(plants.length, 'plant')} put away</summary>
      {fault !== null && <Fault fault={fault} />}
      <ul>
        {plants.map((plant) => (
          <li key={plant.id}>
            {plant.name}
            <button
              type="button"
              className={buttons.quiet}
              disabled={busy}
              onClick={() => send(() => bringPlantBack(plant))}
            >
              Bring back<span className="only-heard"> {plant.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
