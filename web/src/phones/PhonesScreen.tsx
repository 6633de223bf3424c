import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { DoorCode, Phone } from '../../../server/schemas/phones.ts';
import { momentWords } from '../parts/AsOf.tsx';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { DoorCodePanel } from './DoorCodePanel.tsx';
import styles from './PhonesScreen.module.css';
import { letOut, phonesQuery, showCode } from './phone-api.ts';

/** A code as it was shown, the phones on the list by then, and whether it has let one in since. */
interface ShownCode {
  readonly code: DoorCode;
  readonly known: readonly string[];
  readonly isUsed: boolean;
}

/** At the desk: lets phones of the home network in by a code, and out again. */
export default function PhonesScreen() {
  const { data: list, error, refetch, isPending } = useQuery(phonesQuery);
  const [shown, setShown] = useState<ShownCode | null>(null);
  const { busy, fault, send } = useSending();

  if (isPending) return <p className={styles.waiting}>Fetching the list…</p>;
  if (!list) return <Fault fault={error} onAgain={() => refetch()} />;
  const { addresses, phones } = list;
  // A phone that was not there when the code was shown: the code is used, and stays so when that phone is let out again.
  const came = shown && phones.find(({ id }) => !shown.known.includes(id));
  if (came && !shown.isUsed) setShown({ ...shown, isUsed: true });
  const isOpen = shown !== null && !shown.isUsed;

  const show = () =>
    send(async () => {
      // From here on the one before is good no more.
      setShown(null);
      setShown({ code: await showCode(), known: phones.map(({ id }) => id), isUsed: false });
    });

  return (
    <div className={styles.screen}>
      <h1>Phones</h1>
      {addresses.length === 0 ? (
        <OnlyThisMachine />
      ) : (
        <section className={styles.part} aria-labelledby="letting-in">
          <h2 id="letting-in">Let a phone in</h2>
          <p>
            The phone must be in the same home network. Have a code shown, then point the phone’s camera at
            the square of dots, or open the address by hand and type the code.
          </p>
          {fault !== null && <Fault fault={fault} />}
          {came && (
            <p role="status" className={styles.came}>
              <Icon name="keep" />{' '}
              <span>
                <b translate="no">{came.name}</b> is let in.
              </span>
            </p>
          )}
          {isOpen && <DoorCodePanel code={shown.code} addresses={addresses} />}
          <div className={buttons.row}>
            <button type="button" className={buttons.button} disabled={busy} onClick={() => void show()}>
              <Icon name="phone" /> {isOpen ? 'Show another code' : 'Show a code'}
            </button>
          </div>
          <p className={styles.hint}>
            Whoever is let in sees and changes everything here, as you do. In the home network the pictures go
            over the air without encryption of their own: let phones in only where you trust the network.
          </p>
        </section>
      )}
      <section className={styles.part} aria-labelledby="let-in">
        <h2 id="let-in">On the list</h2>
        {phones.length === 0 ? (
          <p>No phone is let in.</p>
        ) : (
          <ul className={styles.list}>
            {phones.map((phone) => (
              <PhoneRow key={phone.id} phone={phone} />
            ))}
          </ul>
        )}
      </section>
    </div>
  );
}

function PhoneRow({ phone }: { phone: Phone }) {
  const { busy, fault, send } = useSending();
  return (
    <li className={styles.row}>
      <div>
        <p className={styles.name} translate="no">
          {phone.name}
        </p>
        <p className={styles.seen}>
          Let in {momentWords(Date.parse(phone.firstSeenAt))}, last seen{' '}
          {momentWords(Date.parse(phone.lastSeenAt))}
        </p>
        {fault !== null && <Fault fault={fault} />}
      </div>
      <button
        type="button"
        className={buttons.quiet}
        disabled={busy}
        aria-label={`Let ${phone.name} out`}
        onClick={() => void send(() => letOut(phone))}
      >
        Let out
      </button>
    </li>
  );
}

function OnlyThisMachine() {
  return (
    <section className={styles.part} aria-labelledby="only-here">
      <h2 id="only-here">Only this machine, so far</h2>
      <p>Rondure answers to this machine alone. To take photos with a phone, stop it and start it with</p>
      <pre className={styles.command}>npm start -- --network</pre>
      <p>
        It then answers in your home network too, but lets no device in without a code that is shown here.
      </p>
    </section>
  );
}
