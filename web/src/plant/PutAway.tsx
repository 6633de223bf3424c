import { useLocation } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import { putPlantAway } from '../api/plants.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { useSending } from '../parts/use-sending.ts';

/** Takes the plant off the bench and goes back there, where it can be taken back. */
export function PutAway({ plant }: { plant: Plant }) {
  const [, goTo] = useLocation();
  const { busy, fault, send } = useSending();

  async function putAway() {
    if (await send(() => putPlantAway(plant))) goTo('/');
  }

  return (
    <section className={forms.part}>
      <h3>Put away</h3>
      <p>
        The plant leaves the bench. Its photos, stops and notes are kept, and it can come back at any time.
      </p>
      <button type="button" className={buttons.quiet} disabled={busy} onClick={putAway}>
        Put {plant.name} away
      </button>
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
