import { median } from 'simple-statistics';
import { exhibitId } from './exhibit-article.ts';
import { escaped } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';
import { numberRows } from './number-rows.ts';
import { shown } from './number-words.ts';

/** The numbers whose errors are summed up plant by plant. */
const SUMMED_UP: readonly { path: string; head: string; digits: number }[] = [
  { path: 'roundness.score', head: 'roundness', digits: 1 },
  { path: 'symmetry.score', head: 'symmetry', digits: 1 },
  { path: 'lopsidedness.percent', head: 'lopsidedness, %', digits: 1 },
  { path: 'ball.radiusMm', head: 'ball radius, mm', digits: 1 },
];

/** One line a plant: photos, overlap with the true canopy, and how far the numbers lie from the truth in the middle. */
export function summaryTable(byPlant: ReadonlyMap<string, readonly Exhibit[]>): string {
  const head = SUMMED_UP.map((one) => `<th>${one.head}</th>`).join('');
  const lines = [...byPlant].map(([key, exhibits]) => {
    const cells = SUMMED_UP.map(({ path, digits }) => `<td>${errorWords(exhibits, path, digits)}</td>`);
    const overlaps = exhibits.flatMap(({ overlap }) => (overlap === null ? [] : [overlap]));
    const measured = exhibits.filter(({ measured: { report } }) => report.status === 'measured');
    return (
      `<tr><th scope="row"><a href="#${key}">${escaped(exhibits[0]?.sample.plant.name ?? key)}</a></th>` +
      `<td>${measured.length} of ${exhibits.length}</td>` +
      `<td>${overlaps.length === 0 ? '–' : shown(median(overlaps), 3)}</td>${cells.join('')}</tr>`
    );
  });
  return (
    '<div class="wide"><table class="summary"><thead><tr><th>Plant</th><th>measured</th><th>overlap</th>' +
    `${head}</tr></thead><tbody>${lines.join('')}</tbody></table></div>` +
    '<p class="aside">Overlap: median intersection over union with the true canopy. The others: median distance from ' +
    'the truth, and how many lie inside their plus-minus. True numbers are taken on the true outline with the true rim; ' +
    'those marked “built” are the plant’s own, in the round: the sphere through its outermost leaves, and its whole ' +
    'width and height, hidden parts included.</p>'
  );
}

function errorWords(exhibits: readonly Exhibit[], path: string, digits: number): string {
  const errors = exhibits.flatMap((exhibit) => {
    const row = numberRows(exhibit).find((one) => one.path === path);
    if (!row || row.value === null || row.truth === null) return [];
    const off = Math.abs(row.value - row.truth.value);
    return [{ off, inside: row.plusMinus !== null && off <= row.plusMinus }];
  });
  if (errors.length === 0) return '–';
  const inside = errors.filter((error) => error.inside).length;
  return `${shown(median(errors.map(({ off }) => off)), digits)} <small>${inside}/${errors.length} inside</small>`;
}

/** Links to every photo of a plant, by day. */
export function dayLinks(exhibits: readonly Exhibit[]): string {
  const links = exhibits.map((exhibit) => {
    const { day, turnDeg } = exhibit.sample;
    const words = `${day.slice(5)}${turnDeg ? ` ${turnDeg}°` : ''}`;
    const refused = exhibit.measured.report.status === 'measured' ? '' : ' class="refused"';
    return `<a href="#${exhibitId(exhibit)}"${refused}>${words}</a>`;
  });
  return `<nav class="days">${links.join(' ')}</nav>`;
}
