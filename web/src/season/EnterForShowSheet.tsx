import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import { enterPlants, showsQuery } from '../api/shows.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { ClassField } from '../shows/ClassField.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';

/** Enters the plant for a show that is written down; a new show is added on the page of shows. */
export default function EnterForShowSheet({
  plant,
  season,
  onClose,
}: {
  plant: Plant;
  season: PlantSeasonAnswer;
  onClose: () => void;
}) {
  const { data, error } = useQuery(showsQuery);
  const [showId, choose] = useState('');
  const [classId, setClass] = useState<string | null>(null);
  const { busy, fault, fields, send } = useSending();
  const today = todayHere();
  const shows = (data?.shows ?? [])
    .filter(({ isOver, show }) => !isOver && !season.entries.some((entry) => entry.showId === show.id))
    .map(({ show }) => show);
  const show = shows.find(({ id }) => id === showId) ?? shows[0];

  async function save(event: FormEvent) {
    event.preventDefault();
    if (show && (await send(() => enterPlants(show, [plant.id], classId)))) onClose();
  }

  return (
    <Sheet title={`Enter ${plant.name} for a show`} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        {error && <Fault fault={error} />}
        {data && !show && <p>No other show to come is written down.</p>}
        {show && (
          <>
            <Field label="Show">
              {(wiring) => (
                <select
                  {...wiring}
                  value={show.id}
                  onChange={(event) => {
                    choose(event.target.value);
                    setClass(null);
                  }}
                >
                  {shows.map(({ id, name, day }) => (
                    <option key={id} value={id}>
                      {name}, {dayWords(day, today)}
                    </option>
                  ))}
                </select>
              )}
            </Field>
            <ClassField show={show} classId={classId} fault={fields.classId} onChoose={setClass} />
          </>
        )}
        {fault !== null && <Fault fault={fault} />}
        {show && <KeepOrCancel busy={busy} onCancel={onClose} />}
      </form>
      <div className={forms.part}>
        <Link href="/shows" className={buttons.quiet}>
          <Icon name="add" /> Write down a new show
        </Link>
      </div>
    </Sheet>
  );
}
