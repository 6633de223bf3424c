import { ALL_TASKS } from '../browser/tasks/all-tasks.ts';

/** A picture of one step, under which task and on what it was done. */
export interface Picture {
  readonly task: string;
  readonly step: string;
  readonly combination: string;
  /** Its file beside the page. */
  readonly file: string;
}

const STYLE = `
:root { color-scheme: light dark; font: 16px/1.4 system-ui, sans-serif; }
body { margin: 2rem; }
table { border-collapse: collapse; margin-bottom: 3rem; }
th, td { padding: .5rem; text-align: left; vertical-align: top; border-top: 1px solid; }
tbody th { width: 10rem; font-weight: 600; }
img { display: block; max-width: 22rem; max-height: 34rem; outline: 1px solid; }
`;

/** One page to leaf through: a table a task, a row a step, a column a combination. */
export function screensPage(pictures: readonly Picture[]): string {
  const tasks = [...new Set(pictures.map(({ task }) => task))];
  const links = tasks.map((task) => `<li><a href="#${task}">${escaped(titleOf(task))}</a></li>`);
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Rondure: ten tasks in pictures</title><style>${STYLE}</style></head>
<body><h1>Ten tasks in pictures</h1><ol>${links.join('')}</ol>
${tasks.map((task) => taskTable(task, pictures)).join('\n')}
</body></html>
`;
}

function taskTable(task: string, pictures: readonly Picture[]): string {
  const own = pictures.filter((one) => one.task === task);
  const columns = [...new Set(own.map(({ combination }) => combination))];
  const rows = [...new Set(own.map(({ step }) => step))].map((step) => {
    const cells = columns.map((column) => {
      const picture = own.find((one) => one.step === step && one.combination === column);
      if (!picture) return '<td></td>';
      const alt = escaped(`${step}, ${column}`);
      return `<td><a href="${picture.file}"><img loading="lazy" src="${picture.file}" alt="${alt}"></a></td>`;
    });
    return `<tr><th scope="row">${escaped(step)}</th>${cells.join('')}</tr>`;
  });
  const head = columns.map((column) => `<th scope="col">${escaped(column)}</th>`).join('');
  return `<h2 id="${task}">${escaped(titleOf(task))}</h2>
<table><thead><tr><td></td>${head}</tr></thead><tbody>${rows.join('\n')}</tbody></table>`;
}

function titleOf(task: string): string {
  return ALL_TASKS.find(({ key }) => key === task)?.title ?? task;
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}
