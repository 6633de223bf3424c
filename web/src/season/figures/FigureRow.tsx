import { type FormEvent, useState } from 'react';
import { setOwnFigure } from '../../api/season.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Field } from '../../parts/Field.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { KeepOrCancel } from '../../parts/KeepOrCancel.tsx';
import { useSending } from '../../parts/use-sending.ts';
import styles from './FigureMakeup.module.css';
import {
  type EditableFigure,
  figureWords,
  readFigure,
  restsOnWords,
  typedFigure,
  unitWords,
} from './figure-words.ts';

/** One figure with what it rests on; opened, it can be changed or set back. */
export function FigureRow({
  editable,
  isOpen,
  onOpen,
  onClose,
}: {
  editable: EditableFigure;
  isOpen: boolean;
  onOpen: () => void;
  onClose: () => void;
}) {
  const { label, figure, isOwn } = editable;
  const { busy, fault, send } = useSending();
  return (
    <li className={styles.figure}>
      <div className={styles.head}>
        <span>{label}</span>
        <span className={styles.value}>{figureWords(editable)}</span>
      </div>
      {figure && <p className={styles.sub}>{restsOnWords(figure)}</p>}
      {isOpen ? (
        <FigureForm editable={editable} onClose={onClose} />
      ) : (
        <div className={buttons.row}>
          <button type="button" className={buttons.quiet} onClick={onOpen}>
            <Icon name="edit" /> Change<span className="only-heard">: {label}</span>
          </button>
          {isOwn && (
            <button
              type="button"
              className={buttons.quiet}
              disabled={busy}
              onClick={() => send(() => setOwnFigure(editable, null))}
            >
              <Icon name="undo" /> Back to the default<span className="only-heard">: {label}</span>
            </button>
          )}
        </div>
      )}
      {fault !== null && <Fault fault={fault} />}
    </li>
  );
}

function FigureForm({ editable, onClose }: { editable: EditableFigure; onClose: () => void }) {
  const { label, unit, most, figure } = editable;
  const [typed, setTyped] = useState(figure === null ? '' : typedFigure(figure.value, unit));
  const [unread, setUnread] = useState<string>();
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const read = readFigure(typed, editable);
    setUnread(read.ok ? undefined : read.fault);
    if (read.ok && (await send(() => setOwnFigure(editable, read.value)))) onClose();
  }

  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Field label={`${label}: your own, in ${unitWords(unit, most)}`} fault={unread ?? fields.value}>
        {(wiring) => (
          <input
            {...wiring}
            inputMode="decimal"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
          />
        )}
      </Field>
      {fault !== null && <Fault fault={fault} />}
      <KeepOrCancel busy={busy} onCancel={onClose} />
    </form>
  );
}
