import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { NOTHING_KNOWN } from '../../core/canopy/known.ts';
import { measureFound, measurePhoto } from '../../core/measure-photo.ts';
import type { Mask, PointPx } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { foundPlant, potWithRim } from '../core/drawn-shapes.ts';

/**
 * The sample renders come with their true canopy, rim and scale, so the whole way from photo to measure can be
 * held against what is really there. Every third sitting of each plant; `npm run score -- sample-images` reads all.
 */

const SAMPLES = join(import.meta.dirname, '../../sample-images');

interface Truth {
  readonly rimMm: number;
  readonly mmPerPx: number;
  readonly empty: string | null;
  readonly axis: { readonly rimLeftPx: PointPx; readonly rimRightPx: PointPx };
}

interface Compared {
  readonly file: string;
  readonly busy: boolean;
  readonly iou: number;
  readonly read: PhotoReport;
  readonly real: PhotoReport;
  readonly scaleRatio: number;
}

async function trueMask(file: string): Promise<Mask> {
  const { data, info } = await sharp(readFileSync(join(SAMPLES, file)))
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    data: Uint8Array.from(data, (value) => (value > 127 ? 1 : 0)),
  };
}

function iouOf(a: Mask, b: Mask): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < a.data.length; i++) {
    both += a.data[i] === 1 && b.data[i] === 1 ? 1 : 0;
    either += a.data[i] === 1 || b.data[i] === 1 ? 1 : 0;
  }
  return both / either;
}

async function compare(file: string): Promise<Compared> {
  const stem = file.replace(/\.jpg$/, '');
  const truth = JSON.parse(readFileSync(join(SAMPLES, `${stem}.truth.json`), 'utf8')) as Truth;
  const photo = await readUprightPhoto(readFileSync(join(SAMPLES, file)));
  const empty =
    truth.empty === null ? null : (await readUprightPhoto(readFileSync(join(SAMPLES, truth.empty)))).raster;
  const known = { ...NOTHING_KNOWN, empty, stand: null };
  const measured = await measurePhoto(photo, { ...known, photoName: file, rimMm: truth.rimMm, turnDeg: 0 });
  const mask = await trueMask(`${stem}.canopy.png`);
  const { rimLeftPx, rimRightPx } = truth.axis;
  const real = measureFound(foundPlant(mask, potWithRim(rimLeftPx, rimRightPx)), {
    name: file,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    rasterWidthPx: mask.width,
    rasterHeightPx: mask.height,
    rimMm: truth.rimMm,
    turnDeg: 0,
    notes: [],
  }).report;
  return {
    file,
    busy: truth.empty !== null,
    iou: measured.canopy === null ? 0 : iouOf(measured.canopy, mask),
    read: measured.report,
    real,
    scaleRatio: (measured.report.scale?.mmPerPx ?? Number.NaN) / truth.mmPerPx,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}

/** Median over the photos of how far a figure reads from the same figure on the true mask. */
function medianError(
  photos: readonly Compared[],
  figure: (report: PhotoReport) => number | undefined,
): number {
  return median(photos.map(({ read, real }) => Math.abs((figure(read) ?? Number.NaN) - (figure(real) ?? 0))));
}

describe('a sample plant measured from its photo', () => {
  let photos: Compared[] = [];

  beforeAll(async () => {
    const season = JSON.parse(readFileSync(join(SAMPLES, 'season.json'), 'utf8')) as {
      plants: { sittings: { views: { file: string }[] }[] }[];
    };
    const files = season.plants.flatMap(({ sittings }) =>
      sittings.filter((_, week) => week % 3 === 0).map(({ views }) => (views[0] as { file: string }).file),
    );
    photos = [];
    for (const file of files) photos.push(await compare(file));
    const round = (value: number | undefined) => value?.toFixed(3) ?? 'none';
    console.log(
      photos
        .map(
          ({ file, iou, scaleRatio, read, real }) =>
            `${file}: IoU ${round(iou)}, scale × ${round(scaleRatio)}, roundness ${round(read.roundness?.score)} for ${round(real.roundness?.score)}, symmetry ${round(read.symmetry?.score)} for ${round(real.symmetry?.score)}, lopsidedness ${round(read.lopsidedness?.percent)} for ${round(real.lopsidedness?.percent)}`,
        )
        .join('\n'),
    );
  }, 600_000);

  it('is measured every time', () => {
    expect(photos.length).toBeGreaterThan(15);
    expect(photos.filter(({ read }) => read.status !== 'measured').map(({ file }) => file)).toEqual([]);
  });

  it('is cut out to an IoU of 0.97 in the median before a plain backdrop', () => {
    expect(median(photos.filter(({ busy }) => !busy).map(({ iou }) => iou))).toBeGreaterThanOrEqual(0.97);
  });

  it('is cut out to an IoU of 0.95 in the median in a busy place with an empty photo', () => {
    expect(median(photos.filter(({ busy }) => busy).map(({ iou }) => iou))).toBeGreaterThanOrEqual(0.95);
  });

  it('has its scale within 2 % in the median, and within 5 % where leaves hang over the rim', () => {
    const errors = photos.map(({ scaleRatio }) => Math.abs(scaleRatio - 1));
    expect(median(errors)).toBeLessThanOrEqual(0.02);
    const off = photos.filter((_, index) => !((errors[index] as number) <= 0.05));
    expect(off.map(({ file, scaleRatio }) => [file, scaleRatio])).toEqual([]);
  });

  it('reads roundness and symmetry within 2 points of the true outline, lopsidedness within 2 % points', () => {
    expect(medianError(photos, (report) => report.roundness?.score)).toBeLessThanOrEqual(2);
    expect(medianError(photos, (report) => report.symmetry?.score)).toBeLessThanOrEqual(2);
    expect(medianError(photos, (report) => report.lopsidedness?.percent)).toBeLessThanOrEqual(2);
  });
});
