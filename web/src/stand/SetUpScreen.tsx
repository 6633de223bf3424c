import { useQuery } from '@tanstack/react-query';
import { useSearchParams } from 'wouter';
import { standsQuery } from '../api/queries.ts';
import { Fault } from '../parts/Fault.tsx';
import { ChangeStand } from './ChangeStand.tsx';
import { NewStand } from './NewStand.tsx';
import { SET_UP_STEPS, type SetUpStep } from './set-up-steps.ts';

/** Sets up a new stand, or changes one: the same five steps. The step stands in the address, so Back goes a step back. */
export default function SetUpScreen({ standId }: { standId: string | null }) {
  const { data: stands, error, refetch, isPending } = useQuery(standsQuery);
  const [search, setSearch] = useSearchParams();
  const asked = search.get('step');
  const step = SET_UP_STEPS.find((one) => one === asked) ?? null;
  const plantId = search.get('plant');
  const goTo = (next: SetUpStep) =>
    setSearch((now) => {
      now.set('step', next);
      return now;
    });

  if (standId === null) return <NewStand step={step} plantId={plantId} onStep={goTo} />;
  if (isPending) return <p>Fetching the stand…</p>;
  const stand = stands?.find(({ id }) => id === standId);
  if (!stand) {
    return <Fault fault={error ?? new Error('There is no such stand.')} onAgain={() => refetch()} />;
  }
  // A stand read anew must not wipe what is being typed, so only another stand starts afresh.
  return <ChangeStand key={stand.id} stand={stand} step={step ?? 'camera'} plantId={plantId} onStep={goTo} />;
}
