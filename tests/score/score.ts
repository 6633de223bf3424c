import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { openNetwork } from '../../core/canopy/model/onnx-door.ts';
import { openOpenCv } from '../../core/opencv/door.ts';
import { confidenceTable } from './confidence-table.ts';
import { type Folder, foldersUnder } from './folders.ts';
import { rememberNetwork } from './remember-network.ts';
import { scoreRenders } from './renders/score-renders.ts';
import { type Bench, scoreFolder } from './score-folder.ts';
import { folderLines } from './table.ts';
import { keepWorst } from './worst-tiles.ts';

/**
 * Scores the canopy cut-out against masks, folder by folder: ours, ours without the network, the network alone.
 *
 *   npm run score -- [options] DIR...
 *
 *   --sources       ours with each voice switched off in turn
 *   --baselines     well-known simple ways beside ours, on copies of 640 px (slow: some seconds a photo)
 *   --strokes N     ours after each of N strokes of a simulated hand
 *   --confidence    how far the stated confidence and the pixels' certainty can be believed
 *   --renders       own renders, made on the first run, against what is asked of them
 *   --network FILE  other weights; `off` to do without
 *   --sheet FILE    picture of the worst photos, --worst N of them (10)
 *   --only NAME     photos whose name contains this; --every N takes each N-th
 *   --each          a line for each photo
 *
 * A DIR holds `images/` and `masks/` (and `masks_withpot/`), or several such folders, or photos with NAME.canopy.png
 * beside them.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sources: { type: 'boolean', default: false },
    baselines: { type: 'boolean', default: false },
    strokes: { type: 'string', default: '0' },
    confidence: { type: 'boolean', default: false },
    renders: { type: 'boolean', default: false },
    network: { type: 'string', default: 'core/canopy/model/first-guess.onnx' },
    sheet: { type: 'string' },
    worst: { type: 'string', default: '10' },
    only: { type: 'string', default: '' },
    every: { type: 'string', default: '1' },
    each: { type: 'boolean', default: false },
  },
});
const say = (lines: readonly string[]) => process.stdout.write(lines.map((line) => `${line}\n`).join(''));
const asked = {
  sources: values.sources,
  baselines: values.baselines,
  strokes: countOf('strokes', 0),
};
const bench: Bench = {
  door: await openOpenCv(),
  network: values.network === 'off' ? null : rememberNetwork(await openNetwork(weightsAt(values.network))),
  worst: values.sheet === undefined ? null : keepWorst(countOf('worst', 1)),
};
if (values.renders) {
  say(await scoreRenders(bench, values.each, (line) => process.stderr.write(`${line}\n`)));
} else {
  const folders = positionals.flatMap(foldersUnder).map(chosen);
  if (folders.every(({ pairs }) => pairs.length === 0)) {
    refuse('No photos with masks were found. Name a folder that holds images/ and masks/.');
  }
  for (const folder of folders) {
    if (folder.pairs.length === 0) continue;
    const score = await scoreFolder(folder, bench, asked);
    say(folderLines(score, values.each));
    if (values.confidence) say(confidenceTable(score));
  }
}
if (values.sheet !== undefined) await bench.worst?.write(values.sheet);

function chosen({ name, pairs }: Folder): Folder {
  const named = pairs.filter((pair) => pair.name.includes(values.only));
  const every = countOf('every', 1);
  return { name, pairs: named.filter((_, k) => k % every === 0) };
}

function countOf(option: 'strokes' | 'worst' | 'every', least: number): number {
  const count = Number(values[option]);
  if (Number.isInteger(count) && count >= least) return count;
  return refuse(`--${option} needs a whole number of at least ${least}, not "${values[option]}".`);
}

function weightsAt(file: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch {
    return refuse(`The network's weights cannot be read at ${file}. Name another file, or --network off.`);
  }
}

function refuse(words: string): never {
  process.stderr.write(`${words}\n`);
  process.exit(2);
}
