import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import { createPlant } from '../api/plants.ts';
import { standsQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { useSending } from '../parts/use-sending.ts';
import { PlantFields } from '../plant/PlantFields.tsx';
import { EMPTY_DRAFT, readDraft } from '../plant/plant-draft.ts';
import styles from './AddPlantScreen.module.css';
import { RimDrawing } from './RimDrawing.tsx';

/** A new plant; it leads straight on to its first photo. */
export default function AddPlantScreen() {
  const [, goTo] = useLocation();
  const { data: stands = [] } = useQuery(standsQuery);
  const [typed, setDraft] = useState(EMPTY_DRAFT);
  const [onlyStand, ...others] = stands.filter(({ putAway }) => !putAway);
  // Where there is one stand, the plant goes on it unless the grower says otherwise.
  const draft =
    typed.standId === null && onlyStand && others.length === 0 ? { ...typed, standId: onlyStand.id } : typed;
  const [unread, setUnread] = useState<Record<string, string>>({});
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const read = readDraft(draft);
    setUnread(read.ok ? {} : read.fields);
    if (!read.ok) return;
    await send(async () => {
      const plant = await createPlant(read.form);
      goTo(`/plants/${plant.id}?add-photos`);
    });
  }

  return (
    <div className={styles.screen}>
      <h1>Add a plant</h1>
      <form className={forms.form} onSubmit={save} noValidate>
        <PlantFields draft={draft} fields={{ ...fields, ...unread }} onChange={setDraft} />
        {fault !== null && <Fault fault={fault} />}
        <div className={buttons.row}>
          <button type="submit" className={buttons.button} disabled={busy}>
            Add it and go on to the first photo
          </button>
        </div>
      </form>
      <aside className={styles.aside}>
        <RimDrawing />
        <p>
          The pot rim is the ruler in every photo. One millimetre wrong on a 130 mm rim makes all sizes 0.8 %
          wrong.
        </p>
      </aside>
    </div>
  );
}
