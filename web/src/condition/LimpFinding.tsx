import type { PlantPage } from '../../../server/schemas/pages.ts';
import { leaveSittingOut } from '../api/log.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { offerUndo } from '../parts/undo.ts';
import { useSending } from '../parts/use-sending.ts';
import { WILT } from './condition-words.ts';
import { firmSittings, rememberFirm } from './firm-sittings.ts';
import styles from './LimpFinding.module.css';

/** A plant that looks limp: what was measured, and one question. Only a yes keeps the sitting out; a no is remembered. */
export function LimpFinding({ page }: { page: PlantPage }) {
  const { wilt, sittings, earlier } = page;
  const { busy, fault, send } = useSending();
  const firm = firmSittings.useValue();
  if (!wilt || wilt.state === 'not-told' || wilt.state === 'firm' || wilt.leaveOutFor === null) return null;
  const { sittingId, leaveOutFor, words } = wilt;
  const sitting = [...sittings, ...earlier].find(({ id }) => id === sittingId);
  if (!sitting || sitting.leftOut !== null || firm.includes(sittingId)) return null;
  const deny = () => {
    rememberFirm(sittingId, true);
    offerUndo(WILT.denied, async () => rememberFirm(sittingId, false));
  };
  return (
    <section aria-labelledby="limp-name" className={styles.finding}>
      <h3 id="limp-name">
        <Icon name="dry" size={28} /> {wilt.state === 'limp' ? WILT.name : WILT.dryName}
      </h3>
      <p>{words}</p>
      <p className={styles.sub}>{WILT.measured}</p>
      <div className={buttons.row}>
        <button
          type="button"
          className={buttons.button}
          disabled={busy}
          onClick={() => send(() => leaveSittingOut({ ...sitting, plantId: page.plant.id }, leaveOutFor))}
        >
          {WILT.yes}
        </button>
        <button type="button" className={buttons.quiet} disabled={busy} onClick={deny}>
          {WILT.no}
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
