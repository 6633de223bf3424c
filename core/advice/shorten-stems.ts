import { dayInWords } from '../day/day-in-words.ts';
import type { LongStem, PhotoReport } from '../report.ts';
import { stopToday } from '../season/stop-today.ts';
import type { Advice } from './advice.ts';
import { cuttingCaution } from './cautions.ts';
import { newestMeasured, newestStop, type PlantHistory } from './plant-history.ts';
import { stopStillBreaking } from './wait-after-stop.ts';

/**
 * Which stems to shorten by how much, back to the ball.
 *
 * @returns advice from the view with most long stems; `null` when nothing stands out, while the plant is breaking
 * from a stop, and when it was stopped since the photo
 *
 * Notes: a stem is long only beyond a tolerance that is never below twice the outline's own doubt.
 *
 * Reference: cut to a joint with a visible bud, leaving no stub: hobby and extension practice; stubs and grey mould: Penn.
 * Flower Growers 203.
 */
export function shortenStems(history: PlantHistory): Advice | null {
  const newest = newestMeasured(history);
  if (newest === null || stopStillBreaking(history) !== null) return null;
  const stop = newestStop(history);
  if (stop !== null && stop.day >= newest.day) return null;
  const report = newest.reports.reduce((most, next) =>
    next.longStems.length > most.longStems.length ? next : most,
  );
  const stems = report.longStems;
  if (stems.length === 0) return null;
  const shoots = stems.filter(({ kind }) => kind === 'shoot').length;
  return {
    kind: 'shorten',
    urgency: 1,
    what: `Shorten ${countInWords(shoots, stems.length - shoots)}.`,
    where: `In the photo of ${dayInWords(newest.day)}, as on a clock: ${stems.map(({ clock }) => clock).join(', ')} o’clock.`,
    howMuch: `${stems.map((stem) => amountInWords(stem, report)).join('; ')}. Cut just above a joint with a sound bud near the mark, leaving no stub.`,
    why: `${stems.length === 1 ? 'It stands' : 'They stand'} outside the ball that the rest of the canopy fills. Look first: a leaf that only leans out needs no cut.${bloomWarning(history)}`,
    sureness: 'likely',
    caution: cuttingCaution(history.kind),
  };
}

function countInWords(shoots: number, shoulders: number): string {
  const parts = [
    shoots > 0 ? `${shoots} long ${shoots === 1 ? 'stem' : 'stems'}` : '',
    shoulders > 0 ? `${shoulders} broad ${shoulders === 1 ? 'shoulder' : 'shoulders'}` : '',
  ];
  return parts.filter((part) => part !== '').join(' and ');
}

function amountInWords({ clock, excessMm, excessPx }: LongStem, { ball }: PhotoReport): string {
  if (excessMm !== null) return `${Math.round(excessMm)} mm at ${clock}`;
  if (ball !== null)
    return `${Math.round((100 * excessPx) / ball.radiusPx)} % of the ball’s radius at ${clock}`;
  return `${Math.round(excessPx)} px at ${clock}`;
}

/** Cutting inside the time that a stop needs to bloom again takes the bloom of that stem with it. */
function bloomWarning(history: PlantHistory): string {
  const tip = stopToday('tip', history);
  return tip?.chanceLate != null && tip.chanceLate > 0.5
    ? ` A stem cut now is unlikely to bloom by the show (${tip.words}): weigh a gap in bloom against the outline.`
    : '';
}
