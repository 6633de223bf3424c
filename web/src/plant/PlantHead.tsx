import { Fragment } from 'react';
import { Link } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import { bringPlantBack } from '../api/plants.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { dayWords, showWords, todayHere } from '../words/day-words.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import styles from './PlantHead.module.css';
import type { SheetName } from './PlantSheets.tsx';

/** Who this plant is, and what can be done with it as a whole. */
export function PlantHead({ plant, onOpen }: { plant: Plant; onOpen: (sheet: SheetName) => void }) {
  const { busy, fault, send } = useSending();
  const today = todayHere();
  const facts = [
    kindAndVariety(plant),
    plant.rimMm === null ? 'rim not given' : `rim ${plant.rimMm} mm`,
    plant.showDay && `show ${dayWords(plant.showDay, today)}`,
    plant.showDay && showWords(plant.showDay, today),
  ].filter((fact) => fact !== null);

  return (
    <header className={styles.head}>
      <div className={styles.who}>
        <h1 translate="no">{plant.name}</h1>
        <p className={styles.facts}>
          {plant.sample && <span className={styles.sample}>Sample</span>}
          {/* Each by itself, or another language would order them as one sentence. */}
          {facts.map((fact, at) => (
            <Fragment key={fact}>
              {at > 0 && ' · '}
              <span>{fact}</span>
            </Fragment>
          ))}
        </p>
      </div>
      <div className={styles.acts}>
        <button type="button" className={buttons.button} onClick={() => onOpen({ name: 'photos' })}>
          <Icon name="camera" /> Add photos
        </button>
        <Link href={`/plants/${plant.id}/cut-list`} className={buttons.quiet}>
          <Icon name="list" /> Cut list
        </Link>
        <Link href={`/plants/${plant.id}/year`} className={buttons.quiet}>
          <Icon name="calendar" /> Its year
        </Link>
        <Link href={`/plants/${plant.id}/card`} className={buttons.quiet}>
          <Icon name="print" /> Bench card
        </Link>
        <button type="button" className={buttons.quiet} onClick={() => onOpen({ name: 'plant' })}>
          <Icon name="edit" /> Details
        </button>
        {plant.putAway && (
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => send(() => bringPlantBack(plant))}
          >
            <Icon name="bench" /> Bring back to the bench
          </button>
        )}
      </div>
      {fault !== null && <Fault fault={fault} />}
    </header>
  );
}
