import type { Figure } from '../../../../core/season/figure.ts';
import type { Defaults } from '../../../../server/schemas/season.ts';

export type EditableFigure = Defaults['figures'][number];

/** What a figure rests on; those with no source say so in their own words. */
export function restsOnWords({ standing, words }: Figure): string {
  return standing === 'published' ? `Published. ${words}` : words;
}

/** "122.5 days", "10 %", "1 record"; `null` is not known. */
export function figureWords({ unit, figure }: Pick<EditableFigure, 'unit' | 'figure'>): string {
  if (figure === null) return 'not known';
  return `${typedFigure(figure.value, unit)} ${unitWords(unit, figure.value)}`;
}

/** The figure as it is typed: a share in hundredths. */
export function typedFigure(value: number, unit: EditableFigure['unit']): string {
  return String(Math.round((unit === 'share' ? 100 * value : value) * 10) / 10);
}

export function unitWords(unit: EditableFigure['unit'], value: number): string {
  if (unit === 'share') return '%';
  const one = unit === 'days' ? 'day' : 'record';
  return value === 1 ? one : `${one}s`;
}

/** Reads a figure as typed; a comma is taken as a decimal point, a share is given in hundredths. */
export function readFigure(
  typed: string,
  { unit, label, least, most, isWhole }: EditableFigure,
): { ok: true; value: number } | { ok: false; fault: string } {
  const bare = typed
    .trim()
    .replace(/\s*(%|days?|records?)$/i, '')
    .replace(',', '.');
  const number = bare === '' ? Number.NaN : Number(bare);
  const value = unit === 'share' ? number / 100 : number;
  if (value >= least && value <= most && (!isWhole || Number.isInteger(value))) return { ok: true, value };
  const [from, to] = [typedFigure(least, unit), typedFigure(most, unit)];
  const wanted = isWhole ? 'a whole number' : 'a number';
  return {
    ok: false,
    fault: `${label}: give ${wanted} from ${from} to ${to} ${unitWords(unit, most)}.`,
  };
}
