import type { PlantKind } from '../plant.ts';
import type { PlantStop } from './plant-history.ts';

/** When to stop, counted back from the show, and what the figure rests on. */
export interface StopRule {
  readonly depth: PlantStop['depth'];
  /** Days before the show: first and last day of the window. */
  readonly fromDaysBefore: number;
  readonly toDaysBefore: number;
  /** A sentence about where the figure comes from and how far to trust it. */
  readonly standing: string;
}

const GARDEN_NEWS = 'Garden News (UK), 2 March 2021; a rough guide that depends on the local climate';
const FUCHSIA_SPEAKERS =
  'fuchsiaclark.com, "Stopping and timing": the usual speakers’ figures, with the warning that nothing is quite this simple';

/**
 * Stops counted back from the show, by kind of plant, deep stop first.
 *
 * Every figure is a default that gives way to the grower's own records. A single published figure is given three
 * days either side, so that a weekend falls into it (our own choice).
 *
 * Reference: named in each rule; regals: common practice, no source.
 */
export function stopRules(kind: PlantKind): readonly StopRule[] {
  switch (kind) {
    case 'regal':
      return [
        weeks('deep', 26, 24, 'Default of 24–26 weeks: common practice, no source.'),
        weeks(
          'tip',
          19,
          18,
          `Default of 18–19 weeks: common practice, no source. Published figures range from 14–18 weeks to 20 (${GARDEN_NEWS}).`,
        ),
      ];
    case 'angel':
      return [around('tip', 18 * 7, `Default of 18 weeks: ${GARDEN_NEWS}.`)];
    case 'zonal':
    case 'ivy-leaved':
      return [around('tip', 16 * 7, `Default of 16 weeks: ${GARDEN_NEWS}.`)];
    case 'dwarf':
      return [weeks('tip', 14, 12, `Default of 12–14 weeks: ${GARDEN_NEWS}.`)];
    case 'fuchsia-single':
      return [around('tip', 60, `Default of 60 days: ${FUCHSIA_SPEAKERS}. Others say 6–9 weeks.`)];
    case 'fuchsia-semi-double':
      return [around('tip', 70, `Default of 70 days: ${FUCHSIA_SPEAKERS}. Others say 8–10 weeks.`)];
    case 'fuchsia-double':
      return [around('tip', 80, `Default of 80 days: ${FUCHSIA_SPEAKERS}. Others say 8–12 weeks.`)];
    case 'other':
      return [];
  }
}

function weeks(depth: StopRule['depth'], from: number, to: number, standing: string): StopRule {
  return { depth, fromDaysBefore: 7 * from, toDaysBefore: 7 * to, standing };
}

function around(depth: StopRule['depth'], daysBefore: number, standing: string): StopRule {
  return { depth, fromDaysBefore: daysBefore + 3, toDaysBefore: daysBefore - 3, standing };
}
