import { quantile } from 'simple-statistics';
import { type BandColumns, type BandPlace, bandLight, enlargements } from './band-columns.ts';
import { printedAt, type StripPlace, WIDEST_DEG } from './fit-turn.ts';
import { type ColumnReading, evenReading } from './judge-steps.ts';
import { bestTurn, codeLevel, LIES, type Lie } from './match-code.ts';
import { angleAtColumn, type PotSight } from './pot-sight.ts';

/** A band read as the collar's code. */
export interface MatchedBand {
  readonly place: BandPlace;
  readonly strip: StripPlace;
  readonly lie: Lie;
  /** Steps that agree minus steps that do not. */
  readonly agree: number;
  /** By how much that is more than for any other lie. */
  readonly lead: number;
}

/** The pot may be this much narrower or wider, and its axis this far aside ÷ radius, than where it was found. */
const RADII = [0.93, 0.98, 1.03];
const ASIDE = [-0.06, 0, 0.06];
/** The usual difference of the rows: what one column in five exceeds. */
const USUAL_QUANTILE = 0.8;

/** Fits the code to a band at every turn, for the pot a little narrower, wider and aside. */
export function matchBand(columns: BandColumns, sight: PotSight, place: BandPlace): MatchedBand {
  const { reading } = readBand(columns, sight, place);
  let best: Omit<MatchedBand, 'lead'> | null = null;
  const most: Record<Lie, number> = { upright: 0, 'upside-down': 0, mirrored: 0 };
  for (const wide of RADII) {
    for (const aside of ASIDE) {
      const tried = {
        ...sight,
        radiusPx: wide * sight.radiusPx,
        axisXPx: sight.axisXPx + aside * sight.radiusPx,
      };
      const even = evenReading(reading, { turnDeg: 0, scale: 1, sight: tried }, WIDEST_DEG);
      for (const lie of LIES) {
        const { agree, turnDeg } = bestTurn(even, lie);
        most[lie] = Math.max(most[lie], agree);
        if (best !== null && agree <= best.agree) continue;
        best = { place, strip: { turnDeg, scale: 1, sight: tried }, lie, agree };
      }
    }
  }
  const matched = best as unknown as Omit<MatchedBand, 'lead'>;
  const others = LIES.filter((lie) => lie !== matched.lie).map((lie) => most[lie]);
  return { ...matched, lead: matched.agree - Math.max(...others) };
}

/** Reads a band along the columns. */
export function readBand(
  columns: BandColumns,
  sight: PotSight,
  place: BandPlace,
): { reading: ColumnReading; usual: number } {
  const { contrast, light } = bandLight(columns, sight, enlargements(columns, sight), place);
  const usual = Math.max(0.02, quantile(Array.from(contrast, Math.abs), USUAL_QUANTILE));
  return { reading: { xPx: columns.xPx, values: contrast.map((value) => value / usual), light }, usual };
}

/** First steps of the search, ÷ radius; halved twice. */
const MOVES: readonly (readonly [keyof BandPlace, number])[] = [
  ['frontYPx', 0.03],
  ['rise', 0.04],
  ['slant', 0.03],
  ['rowShare', 0.008],
];
const MOST_TRIES = 3;

/** Moves a matched band to where the code stands out most. */
export function settleBand(columns: BandColumns, { place, strip }: MatchedBand): BandPlace {
  const { sight } = strip;
  const nears = enlargements(columns, sight);
  const levels = columns.xPx.map((x) => {
    const angle = angleAtColumn(x, sight);
    return Math.abs(angle) > WIDEST_DEG ? 0 : codeLevel(printedAt(angle, strip), 6);
  });
  let best = place;
  let most = standsOut(columns, sight, nears, levels, best);
  for (const size of [1, 0.5, 0.25]) {
    for (const [what, by] of MOVES) {
      for (const way of [-1, 1]) {
        const change = way * size * by * (what === 'frontYPx' ? sight.radiusPx : 1);
        for (let tries = 0; tries < MOST_TRIES; tries++) {
          const moved = { ...best, [what]: best[what] + change };
          const here = standsOut(columns, sight, nears, levels, moved);
          if (here <= most) break;
          [best, most] = [moved, here];
        }
      }
    }
  }
  return best;
}

function standsOut(
  columns: BandColumns,
  sight: PotSight,
  nears: Float64Array,
  levels: Float64Array,
  place: BandPlace,
): number {
  const { contrast } = bandLight(columns, sight, nears, place, 2);
  let sum = 0;
  for (let k = 0; k < contrast.length; k += 2) sum += (contrast[k] as number) * (levels[k] as number);
  return sum;
}
