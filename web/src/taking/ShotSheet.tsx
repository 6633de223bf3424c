import { type FormEvent, useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import { removeView } from '../api/corrections.ts';
import { changeTurns } from '../api/turned.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { degreeWords } from '../words/turn-words.ts';
import styles from './ShotSheet.module.css';
import { TurnField } from './TurnField.tsx';
import { readTurn, turnEntryOf } from './turn-entry.ts';

/** Corrects the turn of a shot, or removes the shot. */
export function ShotSheet({ plantId, view, onClose }: { plantId: string; view: View; onClose: () => void }) {
  const [entry, setEntry] = useState(() => turnEntryOf(view.turnDeg));
  const [unread, setUnread] = useState<string>();
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const read = readTurn(entry);
    setUnread(read.ok ? undefined : read.fault);
    if (!read.ok) return;
    const { turnDeg } = read;
    const done =
      turnDeg === null ? 'The turn is left open.' : `The shot counts as turned ${degreeWords(turnDeg)}.`;
    const change = () => changeTurns(plantId, [view], [{ viewId: view.id, turnDeg }], done);
    if (turnDeg === view.turnDeg || (await send(change))) onClose();
  }

  return (
    <Sheet title="Correct this shot" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <div className={styles.picture}>
          <Photo view={view} crop={plantCrop(view, 1)} label={view.fileName} />
        </div>
        <TurnField entry={entry} fault={unread ?? fields.turnDeg} onChange={setEntry} />
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
      <div className={forms.part}>
        <button
          type="button"
          className={buttons.quiet}
          disabled={busy}
          onClick={async () => {
            if (await send(() => removeView(plantId, view))) onClose();
          }}
        >
          <Icon name="remove" /> Remove this shot
        </button>
        <p>A removed photo can be brought back with Undo.</p>
      </div>
    </Sheet>
  );
}
