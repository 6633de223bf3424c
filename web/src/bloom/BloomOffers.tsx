import type { Day } from '../../../core/day/day.ts';
import { answerBloomDates } from '../api/bloom.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './BloomSeen.module.css';
import { type BloomOffer, OFFER_MEANING, OFFER_WORDS, offerLine, offerQuestion } from './bloom-words.ts';

/** The days of the bloom for the grower's record: one yes puts all of them in, one no is remembered. */
export function BloomOffers({
  plantId,
  offers,
  today,
}: {
  plantId: string;
  offers: readonly BloomOffer[];
  today: Day;
}) {
  const { busy, fault, send } = useSending();
  if (offers.length === 0) return null;
  const answer = (said: 'yes' | 'no') =>
    send(() =>
      answerBloomDates(plantId, offers, said, said === 'yes' ? OFFER_WORDS.written : OFFER_WORDS.refused),
    );
  return (
    <div className={styles.offer}>
      <p>
        <b>{offerQuestion(offers)}</b>
      </p>
      <ul>
        {offers.map((offer) => (
          <li key={offer.event}>{offerLine(offer, today)}</li>
        ))}
      </ul>
      <p className={styles.sub}>{OFFER_MEANING}</p>
      <div className={buttons.row}>
        <button type="button" className={buttons.button} disabled={busy} onClick={() => answer('yes')}>
          {offers.length === 1 ? OFFER_WORDS.yesOne : OFFER_WORDS.yes}
        </button>
        <button type="button" className={buttons.quiet} disabled={busy} onClick={() => answer('no')}>
          {OFFER_WORDS.no}
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
