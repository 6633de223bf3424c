import { answersFrom } from '../api/last-answers.ts';
import { localeInUse } from '../languages/speaker.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './AsOf.module.css';

/** Says that what stands here is the last answer of `path`, while the server is away; nothing otherwise. */
export default function AsOf({ path }: { path: string }) {
  const atMs = answersFrom.useValue().get(path);
  if (atMs === undefined) return null;
  return (
    <p role="status" className={styles.strip}>
      <b>
        As of {momentWords(atMs)}, {navigator.onLine ? 'the server is away' : 'no network'}.
      </b>{' '}
      You can look and take photos: they wait on this device. Everything else can be changed when the server
      is back.
    </p>
  );
}

/** "09:14", or of another day "Thu 26 Nov, 09:14", by this device's clock. */
export function momentWords(atMs: number): string {
  const moment = new Date(atMs);
  const time = new Intl.DateTimeFormat(localeInUse(), { hour: '2-digit', minute: '2-digit' }).format(moment);
  const [then, today] = [todayHere(moment), todayHere()];
  return then === today ? time : `${dayWords(then, today)}, ${time}`;
}
