import { lazy, Suspense, useState } from 'react';
import type { DoorCode } from '../../../server/schemas/phones.ts';
import { momentWords } from '../parts/AsOf.tsx';
import styles from './PhonesScreen.module.css';

const QrCode = lazy(() => import('./QrCode.tsx'));

/** A code to be typed or photographed, with the addresses under which a phone finds this machine. */
export function DoorCodePanel({ code: { code, until }, addresses }: { code: DoorCode; addresses: string[] }) {
  const [chosen, choose] = useState(0);
  const address = addresses[chosen] ?? addresses[0] ?? '';
  return (
    <div className={styles.panel}>
      <Suspense fallback={<div className={styles.qr} />}>
        <QrCode text={`${address}/#${code}`} label={`A square of dots that opens ${address} with the code`} />
      </Suspense>
      <div className={styles.told}>
        <p role="status">
          <span className={styles.label}>Code</span>
          <span className={styles.code}>
            {code.slice(0, 3)} {code.slice(3)}
          </span>
        </p>
        <p className={styles.hint}>Good once, until {momentWords(Date.parse(until))}.</p>
        <fieldset className={styles.addresses}>
          <legend className={styles.label}>Address on the phone</legend>
          {addresses.map((one, k) => (
            <label key={one} className={styles.address}>
              <input type="radio" name="address" checked={k === chosen} onChange={() => choose(k)} />
              <span translate="no">{one}</span>
            </label>
          ))}
        </fieldset>
        {addresses.length > 1 && (
          <p className={styles.hint}>If the first does not open on the phone, try the next.</p>
        )}
      </div>
    </div>
  );
}
