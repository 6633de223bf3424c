import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const RESULTS = join(import.meta.dirname, 'RESULTS.md');

/** A slower ratio than the kept one by more than this share is told. */
const SLIP = 0.2;

/** Puts `lines` under the heading in RESULTS.md, in place of what stood there. */
export function keepSection(heading: string, lines: readonly string[]): void {
  const text = readFileSync(RESULTS, 'utf8');
  const section = `## ${heading}\n\n${lines.join('\n')}\n`;
  const start = text.indexOf(`## ${heading}\n`);
  if (start < 0) {
    writeFileSync(RESULTS, `${text.trimEnd()}\n\n${section}`);
    return;
  }
  const next = text.indexOf('\n## ', start + 1);
  const rest = next < 0 ? '' : `\n${text.slice(next + 1)}`;
  writeFileSync(RESULTS, text.slice(0, start) + section + rest);
}

/** A Markdown table. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  return [head, head.map((_, column) => (column === 0 ? '---' : '---:')), ...rows].map(
    (cells) => `| ${cells.join(' | ')} |`,
  );
}

/** The numbers of one row of a table of the results; `null` when none of that name is kept. */
export function keptRow(name: string): number[] | null {
  const row = readFileSync(RESULTS, 'utf8')
    .split('\n')
    .find((line) => line.startsWith(`| ${name} |`));
  return row === undefined ? null : row.split('|').slice(2, -1).map(Number);
}

/** What to say of a ratio beside the kept one; `null` where it has not slipped. */
export function slipWords(name: string, now: number, kept: number): string | null {
  if (!(now > kept * (1 + SLIP))) return null;
  return `SLIPPED: ${name} is ${now.toFixed(1)} times native now and was ${kept.toFixed(1)} when last kept, ${Math.round((now / kept - 1) * 100)} % slower.`;
}
