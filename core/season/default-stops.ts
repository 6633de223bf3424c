import type { StopDepth } from '../cut/cut.ts';
import { commonPractice, type Figure, ownChoice, published } from './figure.ts';
import type { ChainStop, KindDefaults, StopDefaults, StopToBloom, UsualWindow } from './stop-defaults.ts';

const GARDEN_NEWS = 'Garden News (UK), 2 March 2021; a rough guide that depends on the local climate';
const FUCHSIA_SPEAKERS =
  'fuchsiaclark.com, “Stopping and timing”: the usual speakers’ figures, with the warning that nothing is quite this simple';
const FUCHSIA_NEWSLETTER =
  'A fuchsia society’s newsletter, April 2001: about a month until shoots can be stopped again; Oregon Fuchsia Society: pinched 4, 3 and 2 months before the show.';

const BLOOM_LASTS_DAYS = 14;

const LAST: ChainStop = { role: 'last', depth: 'tip', daysToNext: null };

/**
 * Stops by kind of plant: days to full bloom with their spread, the chain of stops, and how records are weighed.
 *
 * Notes: every figure is a default that gives way to the grower's own records and can be changed. Printed weeks that are counted back
 * from the show (pelargoniums) are taken to put the show in the middle of full bloom, so half of that time is taken off; printed days
 * that run to full bloom (fuchsias) stand as they are. A spread is a quarter of the span of all printed figures, as if 95 % lay in it,
 * and never below a week (fuchsias 5 days): our own choice. A single printed figure has three days either side as its window, so that a
 * weekend falls into it.
 *
 * Reference: named in each figure; regals: common practice, no source.
 */
export const DEFAULT_STOPS: StopDefaults = {
  kinds: {
    regal: kind(
      [
        beforeShow(
          window('deep', 26 * 7, 24 * 7, 'Default of 24–26 weeks: common practice, no source.'),
          ownChoice(10.5, 'As wide as for a tip stop, since no second figure is known'),
        ),
        beforeShow(
          window(
            'tip',
            19 * 7,
            18 * 7,
            `Default of 18–19 weeks: common practice, no source. Published figures range from 14–18 weeks to 20 (${GARDEN_NEWS}).`,
          ),
          ownChoice(10.5, 'A quarter of the span of printed figures, 14 to 20 weeks'),
        ),
      ],
      [
        stop('first', 'deep', commonPractice(45, 'From 24–26 to 18–19 weeks before the show, 6½ weeks')),
        LAST,
      ],
    ),
    angel: kind(
      [
        unknown('deep'),
        beforeShow(
          around(18 * 7, `Default of 18 weeks: ${GARDEN_NEWS}.`),
          ownChoice(10.5, 'A quarter of the span from 12 to 18 weeks, for which the same list names angels'),
        ),
      ],
      twoStops(),
    ),
    zonal: zonalOrIvy(),
    'ivy-leaved': zonalOrIvy(),
    dwarf: kind(
      [
        unknown('deep'),
        beforeShow(
          window('tip', 14 * 7, 12 * 7, `Default of 12–14 weeks: ${GARDEN_NEWS}.`),
          ownChoice(7, 'A week, the least, since the figures printed lie close'),
        ),
      ],
      twoStops(),
    ),
    'fuchsia-single': fuchsia(
      60,
      'Others say 6–9 weeks.',
      ownChoice(5.25, 'A quarter of the span from 6 to 9 weeks'),
    ),
    'fuchsia-semi-double': fuchsia(
      70,
      'Others say 8–10 weeks.',
      ownChoice(5, 'Five days, the least; others say 8–10 weeks'),
    ),
    'fuchsia-double': fuchsia(
      80,
      'Others say 8–12 weeks.',
      ownChoice(8.5, 'A quarter of the span from 8 weeks to 90 days'),
    ),
    other: kind([unknown('deep'), unknown('tip')], [LAST]),
  },
  weighing: {
    acceptedLate: ownChoice(0.1, 'One plant of ten may be late'),
    windowDays: ownChoice(7, 'A week, so that a weekend falls into it'),
    countsAs: ownChoice(1, 'The default counts as one record of your own'),
    spreadFreedom: ownChoice(6, 'The default spread counts as six records'),
    otherVarietyCountsAs: ownChoice(0.5, 'A record of another variety counts half'),
    otherVarietiesMost: ownChoice(2, 'Other varieties together count as two records at most'),
  },
};

function kind(stops: readonly StopToBloom[], chain: readonly ChainStop[]): KindDefaults {
  return {
    stops,
    chain,
    bloomLastsDays: ownChoice(BLOOM_LASTS_DAYS, 'Full bloom is guessed to last a fortnight'),
  };
}

function zonalOrIvy(): KindDefaults {
  return kind(
    [
      unknown('deep'),
      beforeShow(
        around(16 * 7, `Default of 16 weeks: ${GARDEN_NEWS}.`),
        ownChoice(7, 'A week, the least; a beginners’ guide says about 3 months'),
      ),
    ],
    twoStops(),
  );
}

function fuchsia(days: number, others: string, spreadDays: Figure): KindDefaults {
  const standing = `Default of ${days} days: ${FUCHSIA_SPEAKERS}. ${others}`;
  return kind(
    [
      unknown('deep'),
      { depth: 'tip', usual: around(days, standing), meanDays: published(days, standing), spreadDays },
    ],
    [
      stop('first', 'tip', published(30, FUCHSIA_NEWSLETTER)),
      stop('second', 'tip', published(30, FUCHSIA_NEWSLETTER)),
      LAST,
    ],
  );
}

function twoStops(): ChainStop[] {
  return [
    stop(
      'first',
      'tip',
      ownChoice(42, 'Six weeks, between the month of fuchsias and the 6½ weeks of regals'),
    ),
    LAST,
  ];
}

/** Printed weeks run to the show, which should fall into the middle of full bloom. */
function beforeShow(usual: UsualWindow, spreadDays: Figure): StopToBloom {
  const value = (usual.fromDaysBefore + usual.toDaysBefore) / 2 - BLOOM_LASTS_DAYS / 2;
  const words = `${usual.standing} Half of the fortnight of full bloom is taken off, so that the show falls into its middle (our own choice).`;
  const isPractice = usual.standing.includes('no source');
  return {
    depth: usual.depth,
    usual,
    meanDays: { value, standing: isPractice ? 'common-practice' : 'published', words },
    spreadDays,
  };
}

function unknown(depth: StopDepth): StopToBloom {
  return { depth, usual: null, meanDays: null, spreadDays: ownChoice(10.5, 'As wide as for a regal') };
}

function stop(role: ChainStop['role'], depth: StopDepth, daysToNext: Figure): ChainStop {
  return { role, depth, daysToNext };
}

function window(
  depth: StopDepth,
  fromDaysBefore: number,
  toDaysBefore: number,
  standing: string,
): UsualWindow {
  return { depth, fromDaysBefore, toDaysBefore, standing };
}

function around(daysBefore: number, standing: string): UsualWindow {
  return window('tip', daysBefore + 3, daysBefore - 3, standing);
}
