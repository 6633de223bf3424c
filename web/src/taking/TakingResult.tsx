import { Link } from 'wouter';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { TurnedFaults } from '../plan/TurnedFaults.tsx';
import { TurnedWait } from '../plan/TurnedWait.tsx';
import { countedViews } from '../plan/turned-sittings.ts';
import { WeakSide } from '../plan/WeakSide.tsx';
import styles from './TurnedScreen.module.css';
import type { Taking } from './use-taking.ts';

/** What the views say together so far: faults first, then the weak side. */
export function TakingResult({ plantId, taking: { sitting } }: { plantId: string; taking: Taking }) {
  if (sitting === null || sitting.turnedState === 'one-view') return null;
  const report = sitting.turned;
  return (
    <section aria-labelledby="so-far-name" className={styles.part} aria-live="polite">
      <h2 id="so-far-name">All views together</h2>
      {sitting.turnedState !== 'ready' && <TurnedWait sitting={sitting} />}
      {report && (
        <>
          <TurnedFaults sitting={sitting} views={countedViews(sitting)} />
          <WeakSide report={report} />
          <div className={buttons.row}>
            <Link href={`/plants/${plantId}#all-round`} className={buttons.button}>
              <Icon name="turn" /> See the plan and the solid
            </Link>
          </div>
        </>
      )}
    </section>
  );
}
