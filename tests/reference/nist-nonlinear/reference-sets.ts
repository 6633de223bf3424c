import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ModelParameters, REFERENCE_MODELS, type ReferenceModel } from './models.ts';

/** One reference set: data, two starts, and the fit that is certified to ten or eleven digits. */
export interface ReferenceSet {
  readonly name: string;
  readonly difficulty: 'Lower' | 'Average' | 'Higher';
  readonly model: ReferenceModel;
  readonly starts: readonly [far: readonly number[], near: readonly number[]];
  readonly parameters: readonly number[];
  readonly standardDeviations: readonly number[];
  readonly residualSumOfSquares: number;
  readonly residualStandardDeviation: number;
  readonly observations: readonly Observation[];
}

export interface Observation {
  readonly y: number;
  readonly x: number;
  /** NaN in sets with one predictor. */
  readonly x2: number;
}

const FOLDER = join(import.meta.dirname, 'data');

/**
 * The 27 nonlinear regression sets of the NIST Statistical Reference Datasets.
 *
 * Source: National Institute of Standards and Technology (USA), Statistical Reference Datasets, nonlinear regression (1990s): "certified
 * values", found with two programs in 128-bit arithmetic. The files are NIST's own (in the public domain), as handed on in the source
 * package of Ceres Solver 2.1.0 (Debian bookworm, `data/nist`); line ends apart, nothing in them was changed.
 */
export const REFERENCE_SETS: readonly ReferenceSet[] = readdirSync(FOLDER).map((file) =>
  readSet(file.replace('.dat', ''), readFileSync(join(FOLDER, file), 'utf8')),
);

/** What the residuals of a set are at given parameters. */
export function residualsOf(set: ReferenceSet, parameters: readonly number[]): number[] {
  return set.observations.map(
    ({ y, x, x2 }) => y - set.model(parameters as unknown as ModelParameters, x, x2),
  );
}

function readSet(name: string, text: string): ReferenceSet {
  const model = REFERENCE_MODELS[name];
  if (model === undefined) throw new Error(`No model for ${name}`);
  const rows = [...text.matchAll(/^\s*b\d\s*=(.+)$/gm)].map(([, numbers]) => numbersIn(numbers as string));
  const column = (at: number) => rows.map((row) => row[at] as number);
  const table = text.slice(text.lastIndexOf('Data:')).split('\n').slice(1);
  return {
    name,
    difficulty: /(Lower|Average|Higher) Level/.exec(text)?.[1] as ReferenceSet['difficulty'],
    model,
    starts: [column(0), column(1)],
    parameters: column(2),
    standardDeviations: column(3),
    residualSumOfSquares: numberAfter(text, 'Residual Sum of Squares:'),
    residualStandardDeviation: numberAfter(text, 'Residual Standard Deviation:'),
    observations: table
      .map(numbersIn)
      .filter((row) => row.length > 0)
      .map(([y, x, x2]) => ({
        y: name === 'Nelson' ? Math.log(y as number) : (y as number),
        x: x as number,
        x2: x2 ?? Number.NaN,
      })),
  };
}

function numbersIn(line: string): number[] {
  return line.trim().split(/\s+/).filter(Boolean).map(Number);
}

function numberAfter(text: string, label: string): number {
  return numbersIn(text.slice(text.indexOf(label) + label.length).split('\n')[0] as string)[0] as number;
}
