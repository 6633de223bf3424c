import { Link } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import { bringSampleBack } from '../api/plants.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './EmptyBench.module.css';
import { PutAwayPlants } from './PutAwayPlants.tsx';

/** A bench with no plant on it: what to do first. */
export default function EmptyBench({ away }: { away: readonly Plant[] }) {
  const { busy, fault, send } = useSending();
  return (
    <div className={styles.empty}>
      <svg viewBox="0 0 240 120" className={styles.drawing} aria-hidden="true">
        <path d="M10 104h220" className={styles.slat} />
        <path d="M98 78h44l-7 26h-30z" className={styles.pot} />
        <circle cx="120" cy="44" r="34" className={styles.ball} />
      </svg>
      <h1>The bench is empty</h1>
      <p>Add your first plant, then photograph it once a week from the same place.</p>
      <div className={buttons.row}>
        <Link href="/plants/new" className={buttons.button}>
          <Icon name="add" /> Add a plant
        </Link>
        <button type="button" className={buttons.quiet} disabled={busy} onClick={() => send(bringSampleBack)}>
          Bring the sample plants
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
      <PutAwayPlants plants={away} />
    </div>
  );
}
