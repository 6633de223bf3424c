import { existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { DECISION_SIDE_PX } from '../../core/canopy/gather-evidence.ts';
import { firstGuess } from '../../core/canopy/model/first-guess.ts';
import { openNetwork } from '../../core/canopy/model/onnx-door.ts';
import type { PixelShares } from '../../core/canopy/model/pixel-shares.ts';
import { openOpenCv } from '../../core/opencv/door.ts';
import { shrinkRaster } from '../../core/opencv/pictures.ts';
import type { Raster } from '../../core/raster/raster.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { foldersUnder } from './folders.ts';
import { addPixel, newReliability, sayReliability } from './reliability.ts';

/**
 * Scores the network's first guess alone against masks, folder by folder, on the copy of each photo on which
 * the canopy is decided.
 *
 *   node --import tsx tests/score/first-guess.ts [--net FILE] [--side 640] [--sheet sheet.jpg] [--each] DIR...
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    net: { type: 'string', default: 'core/canopy/model/first-guess.onnx' },
    side: { type: 'string', default: String(DECISION_SIDE_PX) },
    sheet: { type: 'string' },
    each: { type: 'boolean' },
  },
});
const door = await openOpenCv();
const network = await openNetwork(new Uint8Array(readFileSync(values.net)));
let looks = 0;
let lookMs = 0;
const timed = {
  ...network,
  async run(planes: Float32Array, width: number, height: number) {
    const start = process.cpuUsage();
    const shares = await network.run(planes, width, height);
    lookMs += processorMs(start);
    looks++;
    return shares;
  },
};
const tiles: Buffer[] = [];
for (const folder of (positionals.length > 0 ? positionals : ['../shared/photos']).flatMap(foldersUnder)) {
  const canopy: number[] = [];
  const withPot: number[] = [];
  const wholeMs: number[] = [];
  const reliability = newReliability();
  for (const pair of folder.pairs) {
    const photo = await readUprightPhoto(new Uint8Array(readFileSync(pair.photo)));
    const raster = shrinkRaster(door, photo.raster, Number(values.side));
    const start = process.cpuUsage();
    const shares = await firstGuess(raster, timed);
    wholeMs.push(processorMs(start));
    const wanted = await maskAt(pair.mask, raster);
    const canopyShare = (i: number) => (shares.foliage[i] as number) + (shares.flower[i] as number);
    const iou = overlap(wanted, (i) => canopyShare(i) > 0.5);
    wanted.forEach((value, i) => {
      addPixel(reliability, canopyShare(i), value >= 128);
    });
    canopy.push(iou);
    const potMask = pair.mask.replace('/masks/', '/masks_withpot/');
    if (potMask !== pair.mask && existsSync(potMask)) {
      withPot.push(overlap(await maskAt(potMask, raster), (i) => (shares.background[i] as number) < 0.5));
    }
    if (values.each === true) process.stdout.write(`  ${iou.toFixed(3)} ${pair.name}\n`);
    if (values.sheet !== undefined) tiles.push(await tileOf(raster, shares));
  }
  report(`${folder.name} (${canopy.length}) canopy`, canopy);
  if (withPot.length > 0) report(`${folder.name} (${withPot.length}) with pot`, withPot);
  process.stdout.write(`  ${sayReliability(reliability)}\n`);
  process.stdout.write(`  ${Math.round(quantile(wholeMs, 0.5))} ms of processor time a photo, median\n`);
}
process.stdout.write(`${Math.round(lookMs / looks)} ms of it a run of the network, mean of ${looks}\n`);
if (values.sheet !== undefined) await writeSheet(values.sheet);

/** Processor time, which other programs on the machine disturb less than the clock. */
function processorMs(since: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
}

async function maskAt(file: string, { width, height }: Raster): Promise<Buffer> {
  return sharp(readFileSync(file)).resize(width, height, { fit: 'fill' }).greyscale().raw().toBuffer();
}

function overlap(wanted: Buffer, found: (i: number) => boolean): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < wanted.length; i++) {
    const inWanted = (wanted[i] as number) >= 128;
    const inFound = found(i);
    if (inWanted && inFound) both++;
    if (inWanted || inFound) either++;
  }
  return both / either;
}

function report(name: string, ious: readonly number[]): void {
  const [median, low] = [quantile(ious, 0.5), quantile(ious, 0.1)];
  process.stdout.write(`${name}: IoU median ${median.toFixed(3)}, 10th percentile ${low.toFixed(3)}\n`);
}

function quantile(list: readonly number[], share: number): number {
  const sorted = [...list].sort((one, other) => one - other);
  const at = share * (sorted.length - 1);
  const [below, above] = [sorted[Math.floor(at)] as number, sorted[Math.ceil(at)] as number];
  return below + (above - below) * (at - Math.floor(at));
}

/** Foliage green, flower magenta, pot blue, soil and support yellow over the grey photo. */
async function tileOf({ width, height, data }: Raster, shares: PixelShares): Promise<Buffer> {
  const out = Buffer.alloc(data.length);
  for (let i = 0; i < width * height; i++) {
    const grey = ((data[3 * i] as number) + (data[3 * i + 1] as number) + (data[3 * i + 2] as number)) / 3;
    const [leaf, bloom, pot, rest] = (['foliage', 'flower', 'pot', 'dressing'] as const).map(
      (kind) => shares[kind][i] as number,
    ) as [number, number, number, number];
    const tint = [bloom + rest, leaf + rest, bloom + pot] as const;
    for (let c = 0; c < 3; c++) out[3 * i + c] = Math.min(255, grey * 0.6 + 110 * (tint[c] as number));
  }
  return sharp(out, { raw: { width, height, channels: 3 } })
    .resize(300, 300, { fit: 'contain', background: '#444' })
    .png()
    .toBuffer();
}

async function writeSheet(file: string): Promise<void> {
  const columns = 8;
  const rows = Math.ceil(tiles.length / columns);
  await sharp({ create: { width: columns * 304, height: rows * 304, channels: 3, background: '#444' } })
    .composite(
      tiles.map((input, k) => ({ input, left: (k % columns) * 304, top: Math.floor(k / columns) * 304 })),
    )
    .jpeg({ quality: 85 })
    .toFile(file);
}
