import type { PlantYear } from '../schemas/season.ts';

const HEAD = ['day', 'what', 'roundness', '±', 'symmetry', '±', 'lopsidedness %', '±', 'words'];

/**
 * A plant's year as CSV: one line a sitting, a stop, a thing noted and the show, by day.
 *
 * Reference: RFC 4180. What is not known is an empty field.
 */
export function yearCsv(year: PlantYear): string {
  const lines = [
    ...year.sittings.map(({ day, roundness, symmetry, lopsidedness, setAside }) => ({
      day,
      cells: [
        'photographed',
        ...[roundness, symmetry, lopsidedness].flatMap((score) => [
          score?.value.toFixed(1) ?? '',
          score?.plusMinus.toFixed(1) ?? '',
        ]),
        setAside ?? '',
      ],
    })),
    ...year.stops.map(({ day, depth }) => ({ day, cells: [`${depth} stop`, ...NO_SCORES, ''] })),
    ...year.log.map(({ day, kind, text }) => ({ day, cells: [kind, ...NO_SCORES, text] })),
    ...(year.show === null
      ? []
      : [{ day: year.show.day, cells: ['show', ...NO_SCORES, `${year.show.name}. ${year.result ?? ''}`] }]),
  ].sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
  return [HEAD, ...lines.map(({ day, cells }) => [day as string, ...cells])]
    .map((cells) => `${cells.map(field).join(',')}\r\n`)
    .join('');
}

const NO_SCORES = ['', '', '', '', '', ''];

/** Quoted where it must be; a leading sign that a spreadsheet would take for a formula is put behind an apostrophe. */
function field(text: string): string {
  const safe = /^[=+@\t\r]|^-(?!\d)/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
