import type { Sitting } from '../../../server/schemas/sitting.ts';
import { measureAnew } from '../api/corrections.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';

/** How far the joining of the views has come; one that broke off can be started again. */
export function TurnedWait({ sitting }: { sitting: Sitting }) {
  const { busy, fault, send } = useSending();
  const [first] = sitting.views;
  if (sitting.turnedState !== 'failed') {
    return (
      <p role="status">
        {sitting.turnedState === 'measuring'
          ? 'Joining the views…'
          : 'The views are joined as soon as each of them is measured.'}
      </p>
    );
  }
  return (
    <>
      <Fault fault={new Error('The views could not be joined. They are kept; try once more.')} />
      {first && (
        <div className={buttons.row}>
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => send(() => measureAnew(sitting.plantId, first.id))}
          >
            <Icon name="again" /> Join them again
          </button>
        </div>
      )}
      {fault !== null && <Fault fault={fault} />}
    </>
  );
}
