import type { PhotoReport } from '../../core/report.ts';
import type { Exhibit } from './measure-sample.ts';
import { NUMBER_NAMES } from './number-words.ts';
import type { SampleTruth } from './sample-truth.ts';

/** What a number should be. */
export interface TrueNumber {
  readonly value: number;
  /** `built`: as the plant was built, in the round; `outline`: measured on the true mask with the true rim. */
  readonly from: 'built' | 'outline';
}

/** One number of a report with what it should be. */
export interface NumberRow {
  /** Where it stands in the report, for example `ball.radiusMm`. */
  readonly path: string;
  /** `null` when the report does not know it. */
  readonly value: number | null;
  readonly plusMinus: number | null;
  /** `null` where nothing true is known to hold it against. */
  readonly truth: TrueNumber | null;
}

/** Lists of their own stand elsewhere on the page. */
const LISTED_APART: readonly (keyof PhotoReport)[] = ['longStems', 'unsure'];

/** Every number of the report: those with a grower's name first, in their order, then all others as they come. */
export function numberRows({ measured, truth, overlap }: Exhibit): NumberRow[] {
  const report = numbersIn(measured.report);
  const real = truth === null ? new Map<string, TrueNumber>() : truths(truth);
  if (overlap !== null) real.set('confidence', { value: overlap, from: 'outline' });
  const paths = new Set([...Object.keys(NUMBER_NAMES), ...report.keys()]);
  const folded = new Set([...paths].map(plusMinusPath));
  return [...paths]
    .filter((path) => !folded.has(path))
    .map((path) => ({
      path,
      value: report.get(path) ?? null,
      plusMinus: report.get(plusMinusPath(path)) ?? null,
      truth: real.get(path) ?? null,
    }));
}

/** Every number in a report by its path; those that are `null` are left out. */
export function numbersIn(report: PhotoReport): Map<string, number> {
  const found = new Map<string, number>();
  const walk = (value: unknown, path: string) => {
    if (typeof value === 'number') found.set(path, value);
    if (typeof value !== 'object' || value === null) return;
    for (const [name, inner] of Object.entries(value)) walk(inner, path === '' ? name : `${path}.${name}`);
  };
  walk(Object.fromEntries(Object.entries(report).filter(([name]) => !isListedApart(name))), '');
  return found;
}

function isListedApart(name: string): boolean {
  return (LISTED_APART as readonly string[]).includes(name);
}

/** Where the plus-minus of a number would stand: beside it, or under its name with `PlusMinus` in it. */
function plusMinusPath(path: string): string {
  const [, head = '', leaf = ''] = /^(.*\.)?([^.]+)$/.exec(path) ?? [];
  if (leaf === 'score' || leaf === 'percent') return `${head}plusMinus`;
  return `${head}${leaf.replace(/(Px|Mm)?$/, 'PlusMinus$1')}`;
}

/** A mask says nothing of these. */
const NOT_ON_A_MASK = ['confidence', 'canopy.flowerShare', 'turnDeg', 'widthPx', 'heightPx'];

/**
 * What is true. The built ball is the sphere through the outermost leaves and the built sizes count what is hidden, so
 * both differ from what a photo can show even without error.
 */
function truths({ report, built }: SampleTruth): Map<string, TrueNumber> {
  const real = new Map<string, TrueNumber>();
  for (const [path, value] of numbersIn(report)) {
    if (!NOT_ON_A_MASK.includes(path)) real.set(path, { value, from: 'outline' });
  }
  const { mmPerPx, axis, canopy, ball } = built;
  const asBuilt: [string, number | undefined][] = [
    ['scale.mmPerPx', mmPerPx],
    ['axis.xPx', axis.xPx],
    ['canopy.widthMm', canopy.widthMm],
    ['canopy.heightMm', canopy.heightMm],
    ['ball.radiusMm', ball?.radiusMm],
  ];
  for (const [path, value] of asBuilt) {
    if (value !== undefined) real.set(path, { value, from: 'built' });
  }
  return real;
}
