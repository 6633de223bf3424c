import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useEffect, useState } from 'react';
import { isOutside } from '../api/outside.ts';
import { queryClient } from '../api/queries.ts';
import { forgetAnswers } from '../kept/kept-answers.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useSending } from '../parts/use-sending.ts';
import { Wordmark } from '../parts/Wordmark.tsx';
import { isUnsent, sendings } from '../photos/sending.ts';
import { startSending } from '../photos/start-sending.ts';
import UnsentStrip from '../photos/UnsentStrip.tsx';
import styles from './DoorScreen.module.css';
import { deviceName } from './device-name.ts';
import { comeIn, doorQuery } from './phone-api.ts';

/** What a device that is not let in sees: one entry for the code that the desk shows. */
export default function DoorScreen() {
  const { data: door } = useQuery(doorQuery);
  const [code, setCode] = useState(() => codeInAddress());
  const [name, setName] = useState(() => deviceName(navigator.userAgent));
  const { busy, fault, fields, send } = useSending();
  const waits = sendings.useValue().some(isUnsent);
  useEffect(forgetTheBench, []);
  // The square of dots may be photographed while the door stands open here.
  useEffect(() => {
    const read = () => setCode(codeInAddress());
    window.addEventListener('hashchange', read);
    return () => window.removeEventListener('hashchange', read);
  }, []);

  // Let in again at the desk, or opened at the desk itself: there is nothing to ask.
  const isIn = door !== undefined && door.at !== 'outside';
  useEffect(() => {
    if (isIn) enter();
  }, [isIn]);

  async function knock(event: FormEvent) {
    event.preventDefault();
    if (await send(() => comeIn({ code, name }))) enter();
  }

  return (
    <main className={styles.door}>
      <p className={styles.mark}>
        <Wordmark />
      </p>
      <h1>{door?.wasLetOut ? 'This device was let out' : 'Come in with a code'}</h1>
      <p className={styles.lead}>
        {door?.wasLetOut
          ? 'At the desk it was taken off the list. With a new code it comes in again.'
          : 'Open Rondure at the desk, on the machine it runs on, press Phones and have a code shown.'}
      </p>
      {waits && <p>The photos that wait on this device stay here and are sent when it is let in.</p>}
      <form className={styles.form} onSubmit={knock} noValidate>
        {fault !== null && <Fault fault={fault} />}
        <Field label="Code from the desk" help="Six digits, good for ten minutes." fault={fields.code}>
          {(wiring) => (
            <input
              {...wiring}
              className={`${wiring.className} ${styles.code}`}
              inputMode="numeric"
              autoComplete="one-time-code"
              maxLength={9}
              value={code}
              onChange={(event) => setCode(event.target.value)}
            />
          )}
        </Field>
        <Field label="Name of this device" help="By it the desk knows it on the list." fault={fields.name}>
          {(wiring) => (
            <input
              {...wiring}
              maxLength={60}
              value={name}
              onChange={(event) => setName(event.target.value)}
            />
          )}
        </Field>
        <button type="submit" className={buttons.button} disabled={busy || code.replace(/\D/g, '') === ''}>
          <Icon name="onward" /> Come in
        </button>
      </form>
      <UnsentStrip />
      <UndoBar />
    </main>
  );
}

/** The code in the address that the desk's square of dots holds: `…/#482913`. */
function codeInAddress(): string {
  return /^#(\d{6})$/.exec(window.location.hash)?.[1] ?? '';
}

/** A used code leaves the address, so that a bookmark or the way back does not show it. */
function enter(): void {
  window.history.replaceState(null, '', window.location.pathname + window.location.search);
  queryClient.clear();
  isOutside.write(false);
  startSending();
}

/** Who is let out keeps the photos that wait, and nothing of the bench. */
function forgetTheBench(): void {
  queryClient.removeQueries({ queryKey: ['bench'] });
  queryClient.removeQueries({ queryKey: ['plant'] });
  void forgetAnswers().catch(() => {});
  if ('caches' in window) void caches.delete('rondure-pictures');
  startSending();
}
