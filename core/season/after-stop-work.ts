import { addDays, type Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { AFTER_STOP } from './after-stop-days.ts';
import { firstOfKind } from './log-entry.ts';
import { type PlantSeason, type Work, workKey } from './work.ts';
import type { WrittenStop } from './written-stops.ts';

const FRESH_CUTS =
  'Fresh cuts rot easily: keep leaves and cuts dry, let air move round them, and leave no stubs.';

/**
 * What follows from each stop that is written down: dry roots after a deep one, dry air after any, a look for breaks.
 *
 * Notes: growers differ on water; some water well and keep airy instead (one hobby page). Work of a stop ends with the next stop.
 *
 * Reference: see `AFTER_STOP`.
 */
export function afterStopWork(season: PlantSeason): Work[] {
  return season.stops.flatMap((stop) => [
    ...(stop.depth === 'deep' ? wateringAfter(stop, season) : []),
    keepAiry(stop, season),
    lookForBreaks(stop, season),
  ]);
}

function wateringAfter({ day }: WrittenStop, season: PlantSeason): Work[] {
  const dryTo = addDays(day, AFTER_STOP.dryDays - 1);
  const littleFrom = addDays(day, AFTER_STOP.dryDays);
  const shared = { plantId: season.plantId, doneOn: null, caution: null };
  return [
    {
      ...shared,
      key: workKey(season.plantId, 'keep-dry', day),
      kind: 'keep-dry',
      day,
      dueBy: dryTo,
      until: dryTo,
      what: `No water until ${dayInWords(littleFrom)}, ${AFTER_STOP.leastDryDays}–5 days at the least; never let the roots turn dust-dry.`,
      why: `Deep stop on ${dayInWords(day)}: a plant without leaves to speak of drinks little.`,
      standing: 'Common practice, no source; some growers water well instead.',
    },
    {
      ...shared,
      key: workKey(season.plantId, 'water-little', day),
      kind: 'water-little',
      day: littleFrom,
      dueBy: addDays(day, AFTER_STOP.breakDays),
      until: addDays(day, AFTER_STOP.breakDays),
      what: 'Water little, until new growth shows.',
      why: `Deep stop on ${dayInWords(day)}.`,
      standing:
        'Common practice; very little water until growth but never dust-dry: Fruit Growers’ Association of Ontario, 1902, for zonals.',
    },
  ];
}

function keepAiry({ day, depth }: WrittenStop, { plantId }: PlantSeason): Work {
  const to = addDays(day, AFTER_STOP.freshDays - 1);
  return {
    key: workKey(plantId, 'keep-airy', day),
    plantId,
    kind: 'keep-airy',
    day,
    dueBy: to,
    until: to,
    what: 'Keep the air dry and moving round the fresh cuts, for a day at the least.',
    why: `Stopped on ${dayInWords(day)} (${depth}). Cuts that stayed dry for one day took less grey mould, for three days less still.`,
    standing: 'Hausbeck and Pennypacker (1991), Plant Disease 75:1168.',
    caution: FRESH_CUTS,
    doneOn: null,
  };
}

function lookForBreaks({ day }: WrittenStop, { plantId, log }: PlantSeason): Work {
  const from = addDays(day, AFTER_STOP.lookForBreaks.fromDays);
  const to = addDays(day, AFTER_STOP.lookForBreaks.toDays);
  return {
    key: workKey(plantId, 'look-for-breaks', day),
    plantId,
    kind: 'look-for-breaks',
    day: from,
    dueBy: to,
    until: addDays(day, AFTER_STOP.breakDays),
    what: 'Look for breaks, and take the tips that were missed.',
    why: `Stopped on ${dayInWords(day)}. A tip that was missed grows on, flowers early and leaves a gap.`,
    standing: 'Common practice, no source; what a missed tip does: prize-pelargoniums.com, February 2015.',
    caution: 'Use a clean blade and cut away from your hand.',
    doneOn: recordOf(log, from, addDays(day, AFTER_STOP.breakDays)),
  };
}

function recordOf(log: PlantSeason['log'], from: Day, to: Day): Day | null {
  return firstOfKind(log, ['seen-breaks', 'took-missed-tips'], from, to)?.day ?? null;
}
