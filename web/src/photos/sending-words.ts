import type { View } from '../../../server/schemas/sitting.ts';
import { SERVER_AWAY } from '../api/fetch-json.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import type { Sending } from './sending.ts';

/** How far a photo on its way is. */
export function stageWords({ stage }: Sending, view: View | null): string {
  switch (stage.at) {
    case 'keeping':
      return 'Being put on this device';
    case 'waiting':
      return 'Waits its turn';
    case 'sending':
      return `Sending, ${Math.round(stage.share * 100)} %`;
    case 'known':
    case 'refused':
      return stage.detail;
    case 'failed':
      return stage.byItself ? `It waits and goes by itself. ${holdUpWords(stage.detail)}` : stage.detail;
    case 'kept':
      return view ? viewWords(view) : 'Received';
  }
}

/** Why photos wait, without telling to do what is done by itself. */
export function holdUpWords(detail: string): string {
  if (!navigator.onLine) return 'There is no network.';
  return detail === SERVER_AWAY ? 'The server does not answer.' : detail;
}

/** What became of a photo that the server has. */
export function viewWords({ state, report, failure }: View): string {
  if (state === 'received') return 'Received';
  if (state === 'measuring') return 'Being measured…';
  if (state === 'failed')
    return failure ?? 'Kept, but the measuring stopped part-way. Measure it anew on its page.';
  if (report?.hint) return `Kept, not measured. ${report.hint}`;
  if (!report?.roundness) return 'Measured';
  return `Measured: roundness ${numberWords(report.roundness.score, 'roundness')} ${plusMinusWords(report.roundness.plusMinus)}`;
}
