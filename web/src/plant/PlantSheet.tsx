import { type FormEvent, useState } from 'react';
import type { Plant } from '../../../server/schemas/plant.ts';
import { changePlant } from '../api/plants.ts';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { EmptyStand } from './EmptyStand.tsx';
import { PlantFields } from './PlantFields.tsx';
import { PutAway } from './PutAway.tsx';
import { draftOf, readDraft } from './plant-draft.ts';

/** A plant's details and its stand. */
export default function PlantSheet({ plant, onClose }: { plant: Plant; onClose: () => void }) {
  const [draft, setDraft] = useState(() => draftOf(plant));
  const [unread, setUnread] = useState<Record<string, string>>({});
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const read = readDraft(draft);
    setUnread(read.ok ? {} : read.fields);
    if (read.ok && (await send(() => changePlant(plant.id, read.form)))) onClose();
  }

  return (
    <Sheet title="Details" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <PlantFields draft={draft} fields={{ ...fields, ...unread }} onChange={setDraft} />
        {fault !== null && <Fault fault={fault} />}
        <p>A changed rim has all photos of this plant measured anew.</p>
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
      {/* The stand's empty photo counts before the plant's own. */}
      {(plant.standId === null || plant.emptyPhotoUrl) && <EmptyStand plant={plant} />}
      {!plant.putAway && <PutAway plant={plant} />}
    </Sheet>
  );
}
