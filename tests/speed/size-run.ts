// One size of photo, in a process of its own so that its memory is its own: `node --import tsx tests/speed/size-run.ts MEGAPIXELS RUNS`.
// Prints one line of JSON for main.ts.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DECISION_SIDE_PX } from '../../core/canopy/gather-evidence.ts';
import { cameraPhoto, SAMPLES } from './camera-photos.ts';
import { recordCalls, timeCalls } from './opencv-calls.ts';
import { IMAGE_STEPS, stepByStep, unpacked } from './photo-steps.ts';
import { StepTimes } from './step-times.ts';
import { throughServer } from './through-server.ts';

/** Debian's, with its own numpy; the first python3 on the path may be another. */
const PYTHON = '/usr/bin/python3';

const [megapixels = 12, runs = 20] = process.argv.slice(2).map(Number);

interface Native {
  readonly version: string;
  readonly threads: number;
  readonly steps: Readonly<Record<string, readonly number[]>>;
}

const folder = mkdtempSync(join(tmpdir(), 'rondure-speed-'));
try {
  const photo = await cameraPhoto(join(SAMPLES, 'greenhouse-regal/2026-11-15.jpg'), megapixels, 1);
  const emptyPhoto = await cameraPhoto(join(SAMPLES, 'greenhouse-regal/empty.jpg'), megapixels, 2);
  const { raster: empty } = await unpacked(emptyPhoto);
  // That one needs its empty photo to be measured; this one does without.
  const alone = await cameraPhoto(join(SAMPLES, 'corner-angel/2026-11-15.jpg'), megapixels, 3);
  const times = new StepTimes();
  // The first run loads and compiles what the others use.
  await stepByStep(photo, empty, folder, new StepTimes());
  for (let run = 0; run < runs; run++) {
    const calls = await timeCalls(() => stepByStep(photo, empty, folder, times));
    times.add(
      'OpenCV calls',
      [...calls.values()].reduce((sum, ms) => sum + ms, 0),
    );
  }
  const label = `${megapixels} MP`;
  await throughServer(alone, { runs, home: join(folder, 'home'), label }, times);
  const suffix = ', with an empty photo';
  await throughServer(photo, { runs, home: join(folder, 'second'), label, empty: emptyPhoto, suffix }, times);

  // Writing the calls down holds all their pictures: no part of what the app needs.
  const peakMB = process.resourceUsage().maxRSS / 1024;
  await recordCalls(folder, () => stepByStep(photo, empty, folder, new StepTimes()));
  const path = join(folder, 'photo.jpg');
  writeFileSync(path, photo);
  const { raster, widthPx, heightPx } = await unpacked(photo);
  const shrink = DECISION_SIDE_PX / Math.max(raster.width, raster.height);
  const sides = [
    raster.width,
    raster.height,
    Math.round(raster.width * shrink),
    Math.round(raster.height * shrink),
  ];
  const native = JSON.parse(
    execFileSync(
      PYTHON,
      [join(import.meta.dirname, 'native.py'), path, folder, String(runs), ...sides.map(String)],
      {
        encoding: 'utf8',
        maxBuffer: 1e8,
      },
    ),
  ) as Native;
  for (const [step, values] of Object.entries(native.steps)) {
    for (const ms of values) times.add(`native ${step}`, ms);
  }
  const told = times.steps().map((step) => [step, times.medianMs(step), times.highMs(step)] as const);
  const sum = (steps: readonly string[]) => steps.reduce((all, step) => all + times.medianMs(step), 0);
  const nativeCalls = times.steps().filter((step) => /^native (?!decode|lab)/.test(step));
  console.log(
    JSON.stringify({
      megapixels,
      widthPx,
      heightPx,
      fileMB: photo.length / 1e6,
      peakMB,
      opencv: native.version,
      nativeThreads: native.threads,
      steps: told,
      ratios: {
        decode: times.medianMs('decode') / times.medianMs('native decode'),
        calls: times.medianMs('OpenCV calls') / sum(nativeCalls),
        image: sum(IMAGE_STEPS) / sum([...nativeCalls, 'native decode', 'native lab']),
      },
    }),
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
