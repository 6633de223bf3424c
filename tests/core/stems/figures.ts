/**
 * How well long stems are found, placed, measured and cut, on rendered plants of known stems, printed as lines.
 *
 *   node --import tsx tests/core/stems/figures.ts [PART] [PLANTS] [FIRST]
 *
 * PART: `leafy` or `bare` (long stems and even plants, exact masks), `worked` (the cut list carried out on the plant, rendered anew). PLANTS plants (default 60), seeds from FIRST (default 1000, seeds
 * that nothing was chosen on; the rules were chosen on seeds below 100). Renders are kept in the system's temporary folder; the first run takes some
 * seconds a plant.
 */

import { bareFigures } from './figures-bare.ts';
import { leafyFigures } from './figures-leafy.ts';
import { workedFigures } from './figures-worked.ts';

const PARTS: Record<string, (plants: number, first: number) => string[] | Promise<string[]>> = {
  leafy: leafyFigures,
  bare: bareFigures,
  worked: workedFigures,
};
const [part, plants = '60', first = '1000'] = process.argv.slice(2);
for (const [name, figures] of Object.entries(PARTS)) {
  if (part !== undefined && part !== name) continue;
  for (const line of await figures(Number(plants), Number(first))) process.stdout.write(`${line}\n`);
}
