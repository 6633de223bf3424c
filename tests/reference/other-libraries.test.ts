import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { croftonPerimeter } from '../../core/measures/crofton-perimeter.ts';
import { extrasOf } from '../../core/measures/extras.ts';
import { mirrorSymmetry } from '../../core/measures/symmetry.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { readSilhouette } from '../../core/silhouette/silhouette.ts';
import { DRAWN } from './drawn-set.ts';

/**
 * The same masks measured by Rondure and by OpenCV and scikit-image, with the differences printed. Runs where Debian's
 * `python3-opencv` and `python3-skimage` are installed (`.ci/run` tries to), and says so where they are not.
 */

const PYTHON = ['/usr/bin/python3', 'python3'].find(
  (python) => spawnSync(python, ['-c', 'import cv2, skimage'], { timeout: 60_000 }).status === 0,
);
const SAMPLES = join(import.meta.dirname, '../../sample-images');

interface Reading {
  readonly name: string;
  readonly area: number;
  readonly filledArea: number;
  readonly filledAreaScipy: number;
  readonly centroidX: number;
  readonly centroidY: number;
  readonly width: number;
  readonly height: number;
  readonly hullArea: number;
  readonly crofton: number;
  readonly circumscribedMiddles: number;
  readonly inscribedToMiddles: number;
  readonly dice: number;
}

interface Job {
  readonly name: string;
  readonly mask: Mask;
  readonly axisX: number;
  readonly rimY: number | null;
}

/** Every fourth canopy of the sample plants, with the rim of its truth moved to the nearest pixel edge. */
async function sampleJobs(): Promise<Job[]> {
  const files = readdirSync(SAMPLES, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.canopy.png'))
    .sort();
  const jobs: Job[] = [];
  for (const file of files.filter((_, index) => index % 4 === 0)) {
    const { data, info } = await sharp(readFileSync(join(SAMPLES, file)))
      .extractChannel(0)
      .raw()
      .toBuffer({ resolveWithObject: true });
    const truth = JSON.parse(readFileSync(join(SAMPLES, file.replace('.canopy.png', '.truth.json')), 'utf8'));
    const { rimLeftPx, rimRightPx } = truth.axis;
    jobs.push({
      name: file.replace('.canopy.png', ''),
      mask: {
        width: info.width,
        height: info.height,
        data: Uint8Array.from(data, (value) => (value > 127 ? 1 : 0)),
      },
      // Halves of a pixel: there a mirrored pixel falls on a whole one, and both ways of counting must agree exactly.
      axisX: Math.round(rimLeftPx[0] + rimRightPx[0]) / 2,
      rimY: Math.round((rimLeftPx[1] + rimRightPx[1]) / 2),
    });
  }
  return jobs;
}

function ours({ name, mask, axisX, rimY }: Job): Reading {
  const silhouette = readSilhouette(mask);
  if (silhouette === null) throw new Error(`${name} is empty.`);
  const extras = extrasOf(silhouette, { axis: null, ball: null, symmetry: null });
  return {
    name,
    area: silhouette.areaPx,
    filledArea: silhouette.filledAreaPx,
    filledAreaScipy: silhouette.filledAreaPx,
    centroidX: silhouette.centroidPx[0],
    centroidY: silhouette.centroidPx[1],
    width: silhouette.widthPx,
    height: silhouette.heightPx,
    hullArea: silhouette.hullAreaPx,
    crofton: croftonPerimeter(silhouette.filled),
    circumscribedMiddles: extras?.circumscribedRadiusPx ?? Number.NaN,
    inscribedToMiddles: extras?.inscribedRadiusPx ?? Number.NaN,
    dice: (mirrorSymmetry(mask, axisX, rimY) ?? Number.NaN) / 100,
  };
}

if (PYTHON === undefined) {
  console.log(
    'Not compared with OpenCV and scikit-image: no python3 with both was found. On Debian: apt-get install python3-opencv python3-skimage.',
  );
}

describe.skipIf(PYTHON === undefined)(
  'the same masks in OpenCV and scikit-image (skipped without them)',
  () => {
    let folder = '';
    let pairs: { readonly our: Reading; readonly their: Reading }[] = [];

    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'rondure-oracle-'));
      const drawn = Object.entries(DRAWN).map(
        ([name, mask]): Job => ({ name, mask, axisX: 100, rimY: null }),
      );
      const jobs = [...drawn, ...(await sampleJobs())];
      for (const [index, { mask }] of jobs.entries()) {
        const { width, height, data } = mask;
        const header = Buffer.from(`P5\n${width} ${height}\n255\n`);
        writeFileSync(
          join(folder, `${index}.pgm`),
          Buffer.concat([header, data.map((inside) => 255 * inside)]),
        );
      }
      const list = jobs.map(({ name, axisX, rimY }, index) => ({
        name,
        mask: join(folder, `${index}.pgm`),
        axisX,
        rimY,
      }));
      writeFileSync(join(folder, 'jobs.json'), JSON.stringify(list));
      const script = join(import.meta.dirname, 'oracles/measure_masks.py');
      const answer = execFileSync(PYTHON as string, [script, join(folder, 'jobs.json')], {
        encoding: 'utf8',
        timeout: 240_000,
      });
      const { opencv, skimage, masks } = JSON.parse(answer) as {
        opencv: string;
        skimage: string;
        masks: Reading[];
      };
      pairs = jobs.map((job, index) => ({ our: ours(job), their: masks[index] as Reading }));
      console.log(`OpenCV ${opencv}, scikit-image ${skimage}; ours less theirs:\n${differences(pairs)}`);
    }, 300_000);

    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    it('were compared on drawn shapes and on sample plants', () => {
      expect(pairs.length).toBeGreaterThan(15);
    });

    it('have the same area, box, centroid and hull, to the pixel', () => {
      for (const { our, their } of pairs) {
        expect([our.area, our.width, our.height]).toEqual([their.area, their.width, their.height]);
        expect(our.centroidX).toBeCloseTo(their.centroidX, 6);
        expect(our.centroidY).toBeCloseTo(their.centroidY, 6);
        // OpenCV adds up the hull in single precision.
        expect(Math.abs(our.hullArea / their.hullArea - 1)).toBeLessThan(1e-6);
      }
    });

    it('have the same area with their gaps filled', () => {
      for (const { our, their } of pairs) {
        expect([our.name, our.filledArea]).toEqual([their.name, their.filledArea]);
        expect([our.name, our.filledArea]).toEqual([their.name, their.filledAreaScipy]);
      }
    });

    it('have the same Crofton perimeter', () => {
      for (const { our, their } of pairs) expect(our.crofton / their.crofton).toBeCloseTo(1, 9);
    });

    it('have the same mirror overlap where the axis lies on a half or whole pixel', () => {
      for (const { our, their } of pairs) expect(our.dice).toBeCloseTo(their.dice, 12);
    });

    // Reasons for the tolerances: see the drawn shapes; OpenCV measures between pixel middles, we along the outline.
    it('have the same circles round and inside, but for the half pixel between middles and outline', () => {
      for (const { our, their } of pairs) {
        const more = our.circumscribedMiddles - their.circumscribedMiddles;
        expect(more).toBeGreaterThan(-0.05);
        expect(more).toBeLessThan(0.71);
        expect(Math.abs(our.inscribedToMiddles - (their.inscribedToMiddles - 0.5))).toBeLessThan(0.75);
      }
    });
  },
);

function differences(pairs: readonly { our: Reading; their: Reading }[]): string {
  const figures = ['area', 'filledArea', 'centroidX', 'hullArea', 'crofton', 'dice'] as const;
  const lengths = ['circumscribedMiddles', 'inscribedToMiddles'] as const;
  const head = ['mask'.padEnd(36), ...[...figures, ...lengths].map((name) => name.padStart(21))].join('');
  const lines = pairs.map(({ our, their }) =>
    [
      our.name.padEnd(36),
      ...[...figures, ...lengths].map((figure) =>
        (our[figure] - their[figure]).toExponential(2).padStart(21),
      ),
    ].join(''),
  );
  return [head, ...lines].join('\n');
}
