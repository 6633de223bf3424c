import type { PlantPage } from '../../../server/schemas/pages.ts';
import { removeEntry } from '../api/diary.ts';
import { removeTurn } from '../api/turns.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './LogSection.module.css';
import { iconOf, type LogLine, lineInWords } from './log-lines.ts';
import { WiltOffer } from './WiltOffer.tsx';

/** One line of the log; it can be changed, and removed with undo. */
export function LogRow({
  line,
  page,
  onOpen,
}: {
  line: LogLine;
  page: PlantPage;
  onOpen: (sheet: SheetName) => void;
}) {
  const { busy, fault, send } = useSending();
  const { name, words } = lineInWords(line);
  const day = dayWords(line.entry.day, todayHere());
  const heard = `${name ?? 'Note'}, ${day}`;
  const remove = () =>
    line.kind === 'turns'
      ? removeTurn(page.plant.id, line.entry.id)
      : removeEntry(page.plant.id, line.kind, line.entry.id);
  const isWilt = line.kind === 'notes' && line.entry.kind === 'seen-wilt';
  return (
    <li className={styles.entry}>
      <span className={styles.icon}>
        <Icon name={iconOf(line)} size={18} />
      </span>
      <div className={styles.words}>
        <p className={styles.when}>{day}</p>
        <p className={styles.text}>
          {name && <b>{name}.</b>} <span translate={line.kind === 'turns' ? undefined : 'no'}>{words}</span>
        </p>
        {isWilt && <WiltOffer page={page} day={line.entry.day} />}
        {fault !== null && <Fault fault={fault} />}
      </div>
      <div className={styles.acts}>
        <button type="button" className={buttons.icon} onClick={() => onOpen(sheetOf(line))}>
          <Icon name="edit" />
          <span className="only-heard">Change: {heard}</span>
        </button>
        <button type="button" className={buttons.icon} disabled={busy} onClick={() => send(remove)}>
          <Icon name="remove" />
          <span className="only-heard">Remove: {heard}</span>
        </button>
      </div>
    </li>
  );
}

function sheetOf(line: LogLine): SheetName {
  if (line.kind === 'turns') return { name: 'turn', turn: line.entry };
  if (line.kind === 'stops') return { name: 'entry', kind: 'stops', entry: line.entry };
  return { name: 'entry', kind: 'notes', entry: line.entry };
}
