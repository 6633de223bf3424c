import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Mask } from '../../../core/raster/raster.ts';
import { SKELETON_MASKS } from './masks.ts';

export type Run = readonly [row: number, first: number, length: number];

export interface ToldSkeletons {
  /** Of scikit-image. */
  readonly version: string;
  readonly skeletons: readonly {
    readonly name: string;
    readonly runs: readonly Run[];
    readonly ends: readonly (readonly [number, number])[];
    readonly joints: readonly (readonly [number, number])[];
  }[];
}

/** A Python that has scikit-image; `undefined` without. */
export const PYTHON = ['/usr/bin/python3', 'python3'].find(
  (python) => spawnSync(python, ['-c', 'import skimage'], { timeout: 60_000 }).status === 0,
);

/** What scikit-image says of all masks. */
export function askScikitImage(python: string): ToldSkeletons {
  const folder = mkdtempSync(join(tmpdir(), 'rondure-skeletons-'));
  try {
    const jobs = SKELETON_MASKS.map(({ name, mask }) => ({
      name,
      width: mask.width,
      height: mask.height,
      runs: runsOf(mask),
    }));
    writeFileSync(join(folder, 'jobs.json'), JSON.stringify(jobs));
    const script = join(import.meta.dirname, '../oracles/skeletonize_masks.py');
    return JSON.parse(
      execFileSync(python, [script, join(folder, 'jobs.json')], { encoding: 'utf8', maxBuffer: 1 << 26 }),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export function maskOfRuns(runs: readonly Run[], width: number, height: number): Mask {
  const data = new Uint8Array(width * height);
  for (const [row, first, length] of runs) data.fill(1, row * width + first, row * width + first + length);
  return { width, height, data };
}

function runsOf({ width, height, data }: Mask): Run[] {
  const runs: Run[] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (data[y * width + x] === 0) continue;
      const first = x;
      while (x < width && data[y * width + x] === 1) x++;
      runs.push([y, first, x - first]);
    }
  }
  return runs;
}
