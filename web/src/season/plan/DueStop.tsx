import type { Day } from '../../../../core/day/day.ts';
import type { Plant } from '../../../../server/schemas/plant.ts';
import { writeStop } from '../../api/log.ts';
import { type Piece, takeBackWork } from '../../api/work-words.ts';
import { useSettling } from '../../bench/work/use-settling.tsx';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import { STOP_WORDS } from '../../words/plant-words.ts';
import styles from './PlanLine.module.css';
import type { Step } from './plan-words.ts';

/** A stop whose time has come: the caution, and one tap that writes it down. */
export function DueStop({
  plant,
  piece,
  step: { depth },
  today,
  onOther,
  onWritten,
}: {
  plant: Plant;
  piece: Piece;
  step: Step;
  today: Day;
  onOther: () => void;
  onWritten: () => void;
}) {
  const { busy, fault, send } = useSending();
  const moving = useSettling([{ ...piece, plantName: plant.name }]);
  if (piece.state === 'skipped') {
    return (
      <div className={buttons.row}>
        <p>{piece.stateInWords}</p>
        <button
          type="button"
          className={buttons.quiet}
          disabled={busy}
          onClick={() => send(() => takeBackWork(piece))}
        >
          <Icon name="undo" /> Not skipped
        </button>
        {fault !== null && <Fault fault={fault} />}
      </div>
    );
  }
  async function write() {
    const form = { day: today, depth };
    const words = `${STOP_WORDS[depth]} written down for today.`;
    if (await send(() => writeStop(plant.id, form, words))) onWritten();
  }
  return (
    <>
      {piece.caution && (
        <p className={styles.caution}>
          <b>Take care.</b> {piece.caution}
        </p>
      )}
      <div className={buttons.row}>
        <button type="button" className={buttons.button} disabled={busy} onClick={write}>
          <Icon name="shorten" /> Stopped today ({depth})
        </button>
        <button type="button" className={buttons.quiet} onClick={onOther}>
          Another day or depth
        </button>
        <button type="button" className={buttons.quiet} onClick={moving.openSheet}>
          Move or skip<span className="only-heard"> the stop</span>
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
      {moving.fault !== null && <Fault fault={moving.fault} />}
      {moving.sheet}
    </>
  );
}
