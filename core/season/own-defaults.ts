import { expectation } from '../errors/expect.ts';
import { PLANT_KINDS, type PlantKind } from '../plant.ts';
import type { Figure } from './figure.ts';
import type { KindDefaults, StopDefaults, WeighingDefaults } from './stop-defaults.ts';

/** A figure of the table that the grower may change. */
export interface EditableFigure {
  /** The same for ever, for example `regal.tip.meanDays`, `regal.first.daysToNext`, `acceptedLate`. */
  readonly key: string;
  /** `null`: for all kinds alike. */
  readonly kind: PlantKind | null;
  readonly label: string;
  readonly unit: 'days' | 'share' | 'records';
  readonly least: number;
  readonly most: number;
  readonly isWhole: boolean;
  /** `null` where nothing is known: the grower may fill it in. */
  readonly figure: Figure | null;
}

/** The grower's own figures by key; those left out stay as they are. */
export type OwnFigures = Readonly<Record<string, number>>;

type Limits = Pick<EditableFigure, 'label' | 'unit' | 'least' | 'most' | 'isWhole'>;
type Lay = (key: string, kind: PlantKind | null, limits: Limits, figure: Figure | null) => Figure | null;

const limits = (
  label: string,
  unit: Limits['unit'],
  least: number,
  most: number,
  isWhole = false,
): Limits => ({ label, unit, least, most, isWhole });

const TO_BLOOM = (depth: string) => limits(`Days from a ${depth} stop to full bloom`, 'days', 14, 400);
const SPREAD = (depth: string) =>
  limits(`How far that differs after a ${depth} stop (standard deviation)`, 'days', 1, 60);
const TO_NEXT = (role: string) => limits(`Days from the ${role} stop to the next`, 'days', 14, 200, true);
const LASTS = limits('Days that full bloom lasts', 'days', 1, 120, true);
const WEIGHING: Readonly<Record<keyof WeighingDefaults, Limits>> = {
  acceptedLate: limits('Share of plants that may be late', 'share', 0.01, 0.5),
  windowDays: limits('Days of a window for a stop', 'days', 1, 28, true),
  countsAs: limits('Own records that the default days count as', 'records', 0.1, 50),
  spreadFreedom: limits('Own records that the default spread counts as', 'records', 3, 100, true),
  otherVarietyCountsAs: limits('What a record of another variety counts as', 'records', 0.01, 1),
  otherVarietiesMost: limits('Most that records of other varieties count as together', 'records', 0.1, 50),
};

/** Every figure of the table in order, with its standing and the range in which it may be changed. */
export function editableFigures(defaults: StopDefaults): EditableFigure[] {
  const found: EditableFigure[] = [];
  laidOver(defaults, (key, kind, range, figure) => {
    found.push({ key, kind, ...range, figure });
    return figure;
  });
  return found;
}

/**
 * Why a figure cannot be taken, as a sentence that says what to do; `null` when it can.
 *
 * Example: 700 for `regal.tip.meanDays` gives "Give days from a tip stop to full bloom as a number from 14 to 400."
 */
export function faultOfOwnFigure(defaults: StopDefaults, key: string, value: number): string | null {
  const entry = editableFigures(defaults).find((figure) => figure.key === key);
  if (entry === undefined) return 'There is no such figure in the table.';
  const { label, least, most, isWhole } = entry;
  if (value >= least && value <= most && (!isWhole || Number.isInteger(value))) return null;
  const wanted = isWhole ? 'whole number' : 'number';
  return `Give ${label[0]?.toLowerCase()}${label.slice(1)} as a ${wanted} from ${least} to ${most}.`;
}

/**
 * The table with the grower's own figures laid over it.
 *
 * @param own by key; throws a `RangeError` for a figure that `faultOfOwnFigure` would not take
 * @returns a new table; each figure changed says what the default was
 */
export function withOwnFigures(defaults: StopDefaults, own: OwnFigures): StopDefaults {
  for (const [key, value] of Object.entries(own)) {
    const fault = faultOfOwnFigure(defaults, key, value);
    if (fault !== null) throw new RangeError(expectation(`a figure that fits (${fault})`, key, value));
  }
  return laidOver(defaults, (key, _kind, _range, figure) => {
    const value = own[key];
    if (value === undefined) return figure;
    const before = figure === null ? 'Before, none was known.' : `The default was ${figure.value}.`;
    return { value, standing: 'grower', words: `Your own figure. ${before}` };
  });
}

/** Goes through the whole table once; what `lay` gives back takes the figure's place. */
function laidOver(defaults: StopDefaults, lay: Lay): StopDefaults {
  const kinds = PLANT_KINDS.map((kind) => [kind, kindLaidOver(kind, defaults.kinds[kind], lay)] as const);
  const weighing = Object.entries(defaults.weighing).map(([key, figure]) => {
    const range = WEIGHING[key as keyof WeighingDefaults];
    return [key, lay(key, null, range, figure)] as const;
  });
  return {
    kinds: Object.fromEntries(kinds) as unknown as Record<PlantKind, KindDefaults>,
    weighing: Object.fromEntries(weighing) as unknown as WeighingDefaults,
  };
}

function kindLaidOver(kind: PlantKind, { stops, chain, bloomLastsDays }: KindDefaults, lay: Lay) {
  return {
    stops: stops.map((stop) => ({
      ...stop,
      meanDays: lay(`${kind}.${stop.depth}.meanDays`, kind, TO_BLOOM(stop.depth), stop.meanDays),
      spreadDays: lay(
        `${kind}.${stop.depth}.spreadDays`,
        kind,
        SPREAD(stop.depth),
        stop.spreadDays,
      ) as Figure,
    })),
    chain: chain.map((stop) => ({
      ...stop,
      daysToNext:
        stop.daysToNext === null
          ? null
          : lay(`${kind}.${stop.role}.daysToNext`, kind, TO_NEXT(stop.role), stop.daysToNext),
    })),
    bloomLastsDays: lay(`${kind}.bloomLastsDays`, kind, LASTS, bloomLastsDays) as Figure,
  };
}
