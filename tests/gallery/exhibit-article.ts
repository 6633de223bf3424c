import { dayInWords } from '../../core/day/day-in-words.ts';
import type { PhotoReport } from '../../core/report.ts';
import { numberedStems } from '../../web/src/photo/cut-marks.ts';
import { chanceWords } from '../../web/src/photo/outline-words.ts';
import { clockWords } from '../../web/src/words/plant-words.ts';
import { drawPhoto } from './draw-photo.ts';
import { escaped } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';
import { numberRows } from './number-rows.ts';
import { shown } from './number-words.ts';
import { numbersTables } from './numbers-table.ts';

/** One photo: what was drawn on it, and beside it all that the report says. */
export async function exhibitArticle(exhibit: Exhibit): Promise<string> {
  const { sample, measured } = exhibit;
  const { report } = measured;
  const id = exhibitId(exhibit);
  const turn = sample.turnDeg ? `, turned ${sample.turnDeg}°` : '';
  const frame = report.frame === null ? '' : `<p>${escaped(report.frame.words)}</p>`;
  return (
    `<article id="${id}"><header><h3>${dayInWords(sample.day)}${turn}</h3>` +
    `<span class="status" data-status="${report.status}">${report.status}</span>` +
    `<code>${escaped(sample.file)}</code></header>` +
    `<figure>${await drawPhoto(exhibit, id)}</figure><div class="answers">` +
    (report.hint === null ? '' : `<p class="hint">${escaped(report.hint)}</p>`) +
    (report.status === 'measured' ? numbersTables(numberRows(exhibit)) : '') +
    `${stemList(exhibit)}${unsureList(report)}${frame}${notes(report)}</div></article>`
  );
}

/** The article's name within the page. */
export function exhibitId({ sample }: Exhibit): string {
  return sample.file.replace(/\.\w+$/, '').replace(/[^\w-]+/g, '-');
}

/** The long stems under the numbers they carry on the photo, and those that were made to outgrow the ball. */
function stemList({ measured, truth }: Exhibit): string {
  const { ball, longStems } = measured.report;
  if (ball === null) return '';
  const items = numberedStems(longStems).map(
    ({ stem: { kind, clock, excessMm, excessPx }, tipPx, cutPx }) =>
      `<li data-excess-px="${excessPx}">${kind} at ${clockWords(clock)}, ` +
      `${excessMm === null ? `${shown(excessPx, 1)} px` : `${shown(excessMm, 1)} mm`} outside the ball; ` +
      `tip ${place(tipPx)}, cut ${place(cutPx)} px</li>`,
  );
  const grown = truth?.built.stems.filter(({ long }) => long) ?? null;
  const really =
    grown === null
      ? ''
      : `<p class="truly">Made to outgrow the ball: ${
          grown.map(({ excessMm }) => `${shown(excessMm, 1)} mm`).join(', ') || 'none'
        }, in depth as well as across.</p>`;
  return `<h4>Long stems (${longStems.length})</h4>${list('ol', items)}${really}`;
}

function unsureList({ unsure, ball }: PhotoReport): string {
  if (ball === null) return '';
  const items = unsure.map(
    ({ chance, inCanopy, areaPx }) =>
      `<li data-chance="${chance}">${chanceWords(chance)} leaf, ${shown(areaPx, 0)} px², ${inCanopy ? '' : 'not '}counted as canopy</li>`,
  );
  return `<h4>Unsure zones (${unsure.length})</h4>${list('ul', items)}`;
}

function notes({ notes: words }: PhotoReport): string {
  return `<h4>Notes (${words.length})</h4>${list(
    'ul',
    words.map((note) => `<li>${escaped(note)}</li>`),
  )}`;
}

function list(kind: 'ol' | 'ul', items: readonly string[]): string {
  return items.length === 0 ? '' : `<${kind}>${items.join('')}</${kind}>`;
}

function place([x, y]: readonly [number, number]): string {
  return `${shown(x, 0)}, ${shown(y, 0)}`;
}
