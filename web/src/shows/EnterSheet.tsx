import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { Show } from '../../../core/season/show.ts';
import { benchQuery } from '../api/queries.ts';
import { enterPlants } from '../api/shows.ts';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import { ClassField } from './ClassField.tsx';

/** Enters plants for a show, one or many, all in one class. */
export default function EnterSheet({
  show,
  enteredIds,
  onClose,
}: {
  show: Show;
  enteredIds: readonly string[];
  onClose: () => void;
}) {
  const { data: bench, error } = useQuery(benchQuery);
  const [plantIds, choose] = useState<readonly string[]>([]);
  const [classId, setClass] = useState<string | null>(null);
  const [unsaid, setUnsaid] = useState(false);
  const { busy, fault, fields, send } = useSending();
  const plants = (bench?.plants ?? [])
    .map(({ plant }) => plant)
    .filter(({ id }) => !enteredIds.includes(id))
    .sort((one, other) => one.name.localeCompare(other.name));

  async function save(event: FormEvent) {
    event.preventDefault();
    setUnsaid(plantIds.length === 0);
    if (plantIds.length > 0 && (await send(() => enterPlants(show, plantIds, classId)))) onClose();
  }

  return (
    <Sheet title={`Enter for ${show.name}`} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        {error && <Fault fault={error} />}
        {!bench && !error && <p>Fetching the plants…</p>}
        {bench && plants.length === 0 && <p>Every plant on the bench is entered already.</p>}
        <fieldset className={forms.choices}>
          <legend>Plants</legend>
          {plants.map((plant) => (
            <label key={plant.id}>
              <input
                type="checkbox"
                checked={plantIds.includes(plant.id)}
                onChange={({ target }) =>
                  choose(
                    target.checked ? [...plantIds, plant.id] : plantIds.filter((one) => one !== plant.id),
                  )
                }
              />
              <span>
                <b translate="no">{plant.name}</b>, {kindAndVariety(plant)}
              </span>
            </label>
          ))}
        </fieldset>
        {unsaid && <p role="alert">Choose a plant first.</p>}
        <ClassField show={show} classId={classId} fault={fields.classId} onChoose={setClass} />
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
