import { type FormEvent, useState } from 'react';
import type { Keeping } from '../../../server/schemas/keeping.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './KeepingScreen.module.css';
import { changePlan } from './keeping-api.ts';

/** How often backups are made, how many stay, and where. */
export function BackupPlanPart({ keeping: { plan } }: { keeping: Keeping }) {
  const [everyDays, setEveryDays] = useState(String(plan.everyDays));
  const [keepCount, setKeepCount] = useState(String(plan.keepCount));
  const [folder, setFolder] = useState(plan.folder ?? '');
  const [kept, setKept] = useState(false);
  const { busy, fault, fields, send } = useSending();

  async function keep(event: FormEvent) {
    event.preventDefault();
    setKept(false);
    const form = {
      everyDays: Number(everyDays),
      keepCount: Number(keepCount),
      folder: folder.trim() || null,
    };
    setKept(await send(() => changePlan(form)));
  }

  return (
    <section className={styles.part} aria-labelledby="plan">
      <h2 id="plan">How backups are made</h2>
      <form className={styles.part} onSubmit={keep} noValidate>
        {fault !== null && <Fault fault={fault} />}
        <Field label="Days between backups" fault={fields.everyDays}>
          {(wiring) => (
            <input
              {...wiring}
              inputMode="numeric"
              value={everyDays}
              onChange={(event) => setEveryDays(event.target.value)}
            />
          )}
        </Field>
        <Field
          label="Backups that stay"
          help="A photo is copied once and shared by all of them, so many cost little."
          fault={fields.keepCount}
        >
          {(wiring) => (
            <input
              {...wiring}
              inputMode="numeric"
              value={keepCount}
              onChange={(event) => setKeepCount(event.target.value)}
            />
          )}
        </Field>
        <Field
          label="Folder"
          help="The whole path, best on another disk. Empty: beside the store."
          fault={fields.folder}
        >
          {(wiring) => (
            <input {...wiring} value={folder} onChange={(event) => setFolder(event.target.value)} />
          )}
        </Field>
        <div className={buttons.row}>
          <button type="submit" className={buttons.button} disabled={busy}>
            Keep this
          </button>
          {kept && <span role="status">It is kept.</span>}
        </div>
      </form>
    </section>
  );
}
