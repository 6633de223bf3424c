import type { PhotoReport } from '../../core/report.ts';
import type { Exhibit } from './measure-sample.ts';
import { NUMBER_NAMES } from './number-words.ts';
import type { SampleTruth } from './sample-truth.ts';

/** One number of a report with what it should be. */
export interface NumberRow {
  /** Where it stands in the report, for example `ball.radiusMm`. */
  readonly path: string;
  /** `null` when the report does not know it. */
  readonly value: number | null;
  readonly plusMinus: number | null;
  /** `null` where nothing true is known to hold it against. */
  readonly truth: number | null;
}

/** Lists of their own stand elsewhere on the page. */
const LISTED_APART: readonly (keyof PhotoReport)[] = ['longStems', 'unsure'];

/** Every number of the report: those with a grower's name first, in their order, then all others as they come. */
export function numberRows({ measured, truth, overlap }: Exhibit): NumberRow[] {
  const report = numbersIn(measured.report);
  const real = truth === null ? new Map<string, number>() : truths(truth);
  if (overlap !== null) real.set('confidence', overlap);
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

/**
 * What is true: measured on the true mask with the true rim, save what the plant was built to. The built ball is the
 * sphere through the outermost leaves, so its radius differs from a silhouette's circle by a little even without error.
 */
function truths({ report, built }: SampleTruth): Map<string, number> {
  const real = numbersIn(report);
  // A mask says nothing of these.
  for (const path of ['confidence', 'canopy.flowerShare', 'turnDeg', 'widthPx', 'heightPx'])
    real.delete(path);
  real.set('scale.mmPerPx', built.mmPerPx);
  real.set('axis.xPx', built.axis.xPx);
  real.set('canopy.widthMm', built.canopy.widthMm);
  real.set('canopy.heightMm', built.canopy.heightMm);
  if (built.ball !== null) real.set('ball.radiusMm', built.ball.radiusMm);
  return real;
}
