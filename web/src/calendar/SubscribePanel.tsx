import { useRef, useState } from 'react';
import buttons from '../parts/buttons.module.css';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import styles from './CalendarScreen.module.css';

/** The address that calendar programs subscribe to, and the same as a file. */
export function SubscribePanel({ path }: { path: string }) {
  const [withWeekly, setWithWeekly] = useState(false);
  const [copied, setCopied] = useState<string | null>(null);
  const entry = useRef<HTMLInputElement>(null);
  const address = `${window.location.origin}${path}${withWeekly ? '?weekly=yes' : ''}`;

  async function copy() {
    try {
      await navigator.clipboard.writeText(address);
      setCopied('Copied.');
    } catch {
      // Browsers keep the clipboard from pages that are not secure, as on a home network.
      entry.current?.select();
      setCopied('This browser does not let a page copy. The address is marked: copy it by hand.');
    }
  }

  return (
    <section className={styles.subscribe} aria-labelledby="subscribe-name">
      <h2 id="subscribe-name">In your own calendar</h2>
      <p>
        Give this address to your calendar program under “subscribe” or “calendar from the web”. It then
        fetches shows, stops and work by itself as all-day events with reminders, and follows when a plan
        changes. It only reads; nothing goes back to Rondure.
      </p>
      <label className={styles.weekly}>
        <input
          type="checkbox"
          checked={withWeekly}
          onChange={(event) => {
            setWithWeekly(event.target.checked);
            setCopied(null);
          }}
        />
        With what comes round every week: photograph, turn, look over
      </label>
      <Field
        label="Address to subscribe to"
        help="Whoever has it can read your calendar. The program must be able to reach the machine that Rondure runs on."
      >
        {(wiring) => (
          <input
            {...wiring}
            ref={entry}
            readOnly
            value={address}
            onFocus={(event) => event.target.select()}
          />
        )}
      </Field>
      <div className={buttons.row}>
        <button type="button" className={buttons.quiet} onClick={copy}>
          <Icon name="copy" /> Copy the address
        </button>
        <a href={address} download="rondure.ics" className={buttons.quiet}>
          <Icon name="save" /> Save it once as a file
        </a>
        <span role="status">{copied}</span>
      </div>
    </section>
  );
}
