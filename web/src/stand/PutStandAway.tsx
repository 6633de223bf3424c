import { useLocation } from 'wouter';
import type { Stand } from '../../../server/schemas/stand.ts';
import { bringStandBack, putStandAway } from '../api/stands.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { useSending } from '../parts/use-sending.ts';

/** Puts the stand away, or brings it back. */
export function PutStandAway({ stand }: { stand: Stand }) {
  const [, goTo] = useLocation();
  const { busy, fault, send } = useSending();
  if (stand.putAway) {
    return (
      <section className={forms.part}>
        <h2>Put away</h2>
        <p>This stand is put away: new photos are taken without it.</p>
        <button
          type="button"
          className={buttons.quiet}
          disabled={busy}
          onClick={() => send(() => bringStandBack(stand))}
        >
          Bring it back
        </button>
        {fault !== null && <Fault fault={fault} />}
      </section>
    );
  }

  async function putAway() {
    if (await send(() => putStandAway(stand))) goTo('/stands');
  }
  return (
    <section className={forms.part}>
      <h2>Put away</h2>
      <p>New photos are then taken without this stand. Photos already taken keep it, and it can come back.</p>
      <button type="button" className={buttons.quiet} disabled={busy} onClick={putAway}>
        Put {stand.name} away
      </button>
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
