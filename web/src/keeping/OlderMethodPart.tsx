import { queryOptions, useQuery } from '@tanstack/react-query';
import { useId } from 'react';
import type { RemeasuringAnswer } from '../../../server/schemas/remeasuring.ts';
import { fetchJson } from '../api/fetch-json.ts';
import { queryClient } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './KeepingScreen.module.css';

const LOOK_AGAIN_MS = 2_000;

const remeasuringQuery = queryOptions({
  queryKey: ['remeasuring'],
  queryFn: ({ signal }) => fetchJson<RemeasuringAnswer>('/keeping/remeasuring', { signal }),
  refetchInterval: ({ state }) => (state.data?.state === 'running' ? LOOK_AGAIN_MS : false),
});

async function tellRun(what: 'start' | 'stop'): Promise<void> {
  const answer = await fetchJson<RemeasuringAnswer>(`/keeping/remeasuring/${what}`, { method: 'POST' });
  queryClient.setQueryData(remeasuringQuery.queryKey, answer);
}

/** Photos measured by an older method: how far they are measured anew, and the way to stop and to go on. Nothing when there are none. */
export function OlderMethodPart() {
  const { data: run } = useQuery(remeasuringQuery);
  const { busy, fault, send } = useSending();
  const headId = useId();
  if (run === undefined || run.outdated === 0) return null;
  const { state, total, done, outdated, brokeDown } = run;
  return (
    <section className={styles.part} aria-labelledby={headId}>
      <h2 id={headId}>Measured by an older method</h2>
      <p>
        Rondure measures in a newer way than when these photos came. Each keeps its old numbers, and says so,
        until new ones take their place. What you set right by hand counts for the new ones too.
      </p>
      {state !== 'idle' && (
        <div className={styles.progress}>
          <label htmlFor={`${headId}-done`}>
            {state === 'running' ? 'Being measured anew' : 'Stopped'}: photos {done} of {total}
          </label>
          <progress id={`${headId}-done`} value={done} max={total} />
          <RestWords run={run} />
        </div>
      )}
      {brokeDown > 0 && (
        <p className={styles.wrong}>
          Photos that could not be measured anew: {brokeDown}. Their old numbers stand. See that their files
          are there by reading everything through, then try again.
        </p>
      )}
      {state === 'idle' && brokeDown === 0 && <p>Photos of an older method: {outdated}.</p>}
      {fault !== null && <Fault fault={fault} />}
      <div className={buttons.row}>
        {state === 'running' ? (
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => void send(() => tellRun('stop'))}
          >
            Stop measuring anew
          </button>
        ) : (
          <button
            type="button"
            className={buttons.button}
            disabled={busy}
            onClick={() => void send(() => tellRun('start'))}
          >
            <Icon name="again" /> {state === 'stopped' ? 'Go on measuring anew' : 'Try again'}
          </button>
        )}
      </div>
    </section>
  );
}

function RestWords({ run: { state, minutesLeft } }: { run: RemeasuringAnswer }) {
  if (state === 'stopped') {
    return <p className={styles.hint}>Old and new numbers stand side by side in a trend until you go on.</p>;
  }
  if (minutesLeft === null) {
    return <p className={styles.hint}>Go on working: fresh photos are measured first.</p>;
  }
  const minutes = Math.max(1, Math.round(minutesLeft));
  return (
    <p className={styles.hint}>
      {minutes < 100 ? (
        <>About {minutes} min are left. Go on working: fresh photos are measured first.</>
      ) : (
        <>About {Math.round(minutes / 60)} h are left. Go on working: fresh photos are measured first.</>
      )}
    </p>
  );
}
