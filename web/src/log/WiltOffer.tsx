import type { PlantPage } from '../../../server/schemas/pages.ts';
import { leaveSittingOut } from '../api/log.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { useSending } from '../parts/use-sending.ts';
import { LIMP } from '../words/left-out-words.ts';

/** A limp plant's photos say nothing of its shape: offers to leave that day's sitting out. */
export function WiltOffer({ page, day }: { page: PlantPage; day: string }) {
  const { busy, fault, send } = useSending();
  const sitting = [...page.sittings, ...page.earlier].find((one) => one.day === day);
  if (!sitting) return null;
  if (sitting.leftOut !== null) return <p>That day’s sitting is left out: {sitting.leftOut}.</p>;
  return (
    <div className={buttons.row}>
      <button
        type="button"
        className={buttons.quiet}
        disabled={busy}
        onClick={() => send(() => leaveSittingOut({ ...sitting, plantId: page.plant.id }, LIMP))}
      >
        Leave that day’s photos out of the trend
      </button>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
