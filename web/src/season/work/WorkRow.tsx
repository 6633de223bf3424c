import type { Day } from '../../../../core/day/day.ts';
import type { PlantPage } from '../../../../server/schemas/pages.ts';
import { type Piece, takeBackWork } from '../../api/work-words.ts';
import { useSettling } from '../../bench/work/use-settling.tsx';
import { WORK_ICONS } from '../../bench/work/work-words.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import type { SheetName } from '../../plant/PlantSheets.tsx';
import { dayWords } from '../../words/day-words.ts';
import styles from './PlantWork.module.css';
import { recordDone } from './record-done.ts';
import { whenWords } from './work-when.ts';

/** One piece of work: what, when and why, the caution beside the hand, done with one tap. */
export function WorkRow({
  piece,
  page,
  today,
  onOpen,
  onSettled,
}: {
  piece: Piece;
  page: PlantPage;
  today: Day;
  onOpen: (sheet: SheetName) => void;
  onSettled: () => void;
}) {
  const { kind, what, why, standing, caution, state, movedFrom } = piece;
  const { busy, fault, send } = useSending();
  const moving = useSettling([{ ...piece, plantName: page.plant.name }], onSettled);
  async function settle(change: () => Promise<void>) {
    if (await send(change)) onSettled();
  }
  const isNow = state === 'due' || state === 'overdue';
  return (
    <li className={styles.row} data-state={state}>
      <span className={styles.icon}>
        <Icon name={WORK_ICONS[kind]} />
      </span>
      <div className={styles.words}>
        <h3 className={styles.what}>{what}</h3>
        <p className={styles.sub}>
          {whenWords(piece, today)}
          {movedFrom !== null && `; moved from ${dayWords(movedFrom, today)}`}
        </p>
        {isNow && caution && (
          <p className={styles.caution}>
            <b>Take care.</b> {caution}
          </p>
        )}
        <details className={styles.why}>
          <summary>Why</summary>
          <p>{why}</p>
          <p className={styles.sub}>{standing}</p>
          {!isNow && caution && <p className={styles.caution}>{caution}</p>}
        </details>
        <div className={styles.acts}>
          {kind === 'photograph' ? (
            <button type="button" className={buttons.quiet} onClick={() => onOpen({ name: 'photos' })}>
              <Icon name="camera" /> Add photos
            </button>
          ) : (
            <button
              type="button"
              className={isNow ? buttons.button : buttons.quiet}
              disabled={busy}
              onClick={() => settle(() => recordDone(piece, page, today))}
            >
              <Icon name="keep" /> Done<span className="only-heard">: {what}</span>
            </button>
          )}
          {isNow && kind !== 'photograph' && (
            <button type="button" className={buttons.icon} onClick={() => onOpen({ name: 'photos' })}>
              <Icon name="camera" />
              <span className="only-heard">Photograph it as well</span>
            </button>
          )}
          <button type="button" className={buttons.quiet} onClick={moving.openSheet}>
            Move or skip<span className="only-heard">: {what}</span>
          </button>
          {movedFrom !== null && (
            <button
              type="button"
              className={buttons.quiet}
              disabled={busy}
              onClick={() => settle(() => takeBackWork(piece))}
            >
              <Icon name="undo" /> Back to its day
            </button>
          )}
        </div>
        {fault !== null && <Fault fault={fault} />}
        {moving.fault !== null && <Fault fault={moving.fault} />}
        {moving.sheet}
      </div>
    </li>
  );
}
