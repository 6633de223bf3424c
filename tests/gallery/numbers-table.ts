import { escaped } from './markup.ts';
import type { NumberRow, TrueNumber } from './number-rows.ts';
import { digitsOf, NUMBER_NAMES, nameOf, shown, shownDifference, unitOf } from './number-words.ts';

const UNKNOWN = '<td class="unknown">not known</td>';

/** The numbers with a grower's name as a table, all others in a second one that opens. */
export function numbersTables(rows: readonly NumberRow[]): string {
  const first = rows.filter(({ path }) => path in NUMBER_NAMES);
  const others = rows.filter(({ path }) => !(path in NUMBER_NAMES));
  if (others.length === 0) return table(first);
  return `${table(first)}<details><summary>All other numbers of the report (${others.length})</summary>${table(others)}</details>`;
}

function table(rows: readonly NumberRow[]): string {
  const head = '<tr><th scope="col">Number</th><th>Measured</th><th>True</th><th>Off by</th></tr>';
  return `<table class="numbers"><thead>${head}</thead><tbody>${rows.map(row).join('')}</tbody></table>`;
}

function row({ path, value, plusMinus, truth }: NumberRow): string {
  const digits = digitsOf(path);
  const unit = unitOf(path);
  const name = `<th scope="row" title="${escaped(path)}">${escaped(nameOf(path))}${unit === '' ? '' : `, ${unit}`}</th>`;
  const measured =
    value === null
      ? UNKNOWN
      : `<td><data value="${value}" data-path="${path}">${shown(value, digits)}</data>${
          plusMinus === null
            ? ''
            : ` <span class="plus-minus" data-value="${plusMinus}">± ${shown(plusMinus, digits)}</span>`
        }</td>`;
  const real =
    truth === null
      ? '<td></td>'
      : `<td data-truth="${truth.value}">${shown(truth.value, digits)}${truth.from === 'built' ? ' <small>built</small>' : ''}</td>`;
  return `<tr>${name}${measured}${real}${offBy(value, plusMinus, truth, digits)}</tr>`;
}

/** The difference, and where there is a plus-minus whether it covers it. */
function offBy(
  value: number | null,
  plusMinus: number | null,
  truth: TrueNumber | null,
  digits: number,
): string {
  if (value === null || truth === null) return '<td></td>';
  const words = shownDifference(value - truth.value, digits);
  if (plusMinus === null) return `<td>${words}</td>`;
  const inside = Math.abs(value - truth.value) <= plusMinus;
  return `<td class="${inside ? 'inside' : 'outside'}">${words} <small>${inside ? 'inside' : 'outside'} ±</small></td>`;
}
