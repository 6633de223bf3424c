// How long each step of a photo's way takes, by size, and beside it the same picture work in native OpenCV:
// `npm run speed -- [--runs N] [--sizes 3,12,24,48] [--keep]`. With --keep the tables go to RESULTS.md.
// A measurement, not a test: what is slow depends on the machine. Asked for: 12 MP from upload to answer within 1.0 s, and at most
// 2.5 times native for the image part.
import { execFileSync } from 'node:child_process';
import { availableParallelism, cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { keepSection, keptRow, slipWords, table } from './results.ts';

const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '20' },
    sizes: { type: 'string', default: '3,12,24,48' },
    keep: { type: 'boolean', default: false },
  },
});

type Ratio = 'decode' | 'calls' | 'image';

interface SizeTimes {
  readonly megapixels: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly fileMB: number;
  readonly peakMB: number;
  readonly opencv: string;
  readonly nativeThreads: number;
  readonly steps: readonly (readonly [step: string, medianMs: number, highMs: number])[];
  readonly ratios: Readonly<Record<Ratio, number>>;
}

/** Steps that contain others, and the first photo, are no single step to be named slowest. */
const WHOLES = /^(upload|first photo|OpenCV calls|native | )/;

function timesOf(megapixels: string): SizeTimes {
  const child = ['--import', 'tsx', join(import.meta.dirname, 'size-run.ts'), megapixels, values.runs];
  const printed = execFileSync(process.execPath, child, {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return JSON.parse(printed) as SizeTimes;
}

const load = loadavg()[0] as number;
const sizes = values.sizes.split(',').map((megapixels) => {
  const told = timesOf(megapixels);
  console.error(`${megapixels} MP measured.`);
  return told;
});

const stepNames = [...new Set(sizes.flatMap(({ steps }) => steps.map(([step]) => step)))];
const msOf = ({ steps }: SizeTimes, name: string) => {
  const found = steps.find(([step]) => step === name);
  return found === undefined ? '–' : `${found[1].toFixed(0)} / ${found[2].toFixed(0)}`;
};
const heads = sizes.map(({ megapixels }) => `${megapixels} MP`);
const own = stepNames.filter((step) => !step.startsWith('native '));
const native = stepNames.filter((step) => step.startsWith('native '));
const slowest = sizes.map(
  ({ steps }) => steps.filter(([step]) => !WHOLES.test(step)).toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? '',
);

const RATIO_WORDS: Readonly<Record<Ratio, string>> = {
  decode: 'unpack and shrink',
  calls: 'the calls of OpenCV',
  image: 'the whole image part',
};
const ratioNames = Object.keys(RATIO_WORDS) as Ratio[];
const first = sizes[0] as SizeTimes;
const lines = [
  `${new Date().toISOString().slice(0, 10)}, ${cpus()[0]?.model.trim()}, ${availableParallelism()} cores, load ${load.toFixed(1)} before; Node ${process.version}, native OpenCV ${first.opencv} with ${first.nativeThreads} threads. A sample plant on its stand with the photo of the empty stand, enlarged, with a camera’s noise. Milliseconds, median / 95 % of ${values.runs} runs.`,
  '',
  ...table(
    ['Step', ...heads],
    own.map((step) => [step.trim(), ...sizes.map((size) => msOf(size, step))]),
  ),
  ...table(['file, MB', ...sizes.map(({ fileMB }) => fileMB.toFixed(1))], []).slice(0, 1),
  ...table(['memory at most, MB', ...sizes.map(({ peakMB }) => peakMB.toFixed(0))], []).slice(0, 1),
  ...table(['slowest step', ...slowest], []).slice(0, 1),
  '',
  'The same picture work in native OpenCV, done over on the same pictures (`tests/speed/native.py`):',
  '',
  ...table(
    ['Step', ...heads],
    native.map((step) => [step, ...sizes.map((size) => msOf(size, step))]),
  ),
  '',
  'Times native. The whole image part is unpack, canopy, frame, leaf and measures against all of the native steps: the network and what Rondure reckons itself have no twin there and count on one side only.',
  '',
  ...table(
    ['Part', ...heads],
    ratioNames.map((ratio) => [RATIO_WORDS[ratio], ...sizes.map(({ ratios }) => ratios[ratio].toFixed(2))]),
  ),
];
console.log(lines.join('\n'));

for (const ratio of ratioNames) {
  const kept = keptRow(RATIO_WORDS[ratio]);
  if (kept === null || kept.length !== sizes.length) continue;
  for (const [at, { megapixels, ratios }] of sizes.entries()) {
    const words = slipWords(`${RATIO_WORDS[ratio]} at ${megapixels} MP`, ratios[ratio], kept[at] as number);
    if (words !== null) console.log(words);
  }
}
if (values.keep) keepSection('A photo’s way', lines);
