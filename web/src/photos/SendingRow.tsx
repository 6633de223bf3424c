import { Link } from 'wouter';
import type { View } from '../../../server/schemas/sitting.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SendingRow.module.css';
import { dropSending, type Sending, sendAgain } from './send-queue.ts';

/** One photo on its way: how far it is, what came out, what to do if it failed. */
export function SendingRow({ sending, view }: { sending: Sending; view: View | null }) {
  const { key, file, stage } = sending;
  const share = stage.at === 'sending' ? stage.share : stage.at === 'waiting' ? 0 : 1;
  const wrong = stage.at === 'failed' || stage.at === 'refused';
  return (
    <li className={styles.row}>
      <p className={styles.file}>{file.name}</p>
      <p className={styles.stage} data-wrong={wrong || undefined} role="status">
        {stageWords(sending, view)}
      </p>
      {(stage.at === 'sending' || stage.at === 'waiting') && (
        <progress className={styles.bar} value={share} aria-label={`${file.name} sent`} />
      )}
      {stage.at === 'known' && <Link href={`/plants/${stage.plantId}`}>See it</Link>}
      {wrong && (
        <div className={buttons.row}>
          {stage.at === 'failed' && (
            <button type="button" className={buttons.quiet} onClick={() => sendAgain(key)}>
              <Icon name="again" /> Send again
            </button>
          )}
          <button type="button" className={buttons.quiet} onClick={() => dropSending(key)}>
            Leave it out
          </button>
        </div>
      )}
    </li>
  );
}

function stageWords({ stage }: Sending, view: View | null): string {
  switch (stage.at) {
    case 'waiting':
      return 'Waits its turn';
    case 'sending':
      return `Sending, ${Math.round(stage.share * 100)} %`;
    case 'known':
    case 'refused':
    case 'failed':
      return stage.detail;
    case 'kept':
      return view ? viewWords(view) : 'Received';
  }
}

function viewWords({ state, report, failure }: View): string {
  if (state === 'received') return 'Received';
  if (state === 'measuring') return 'Being measured…';
  if (state === 'failed')
    return failure ?? 'Kept, but the measuring stopped part-way. Measure it anew on its page.';
  if (report?.hint) return `Kept, not measured. ${report.hint}`;
  if (!report?.roundness) return 'Measured';
  return `Measured: roundness ${numberWords(report.roundness.score, 'roundness')} ${plusMinusWords(report.roundness.plusMinus)}`;
}
