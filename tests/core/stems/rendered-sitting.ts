import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { Cut } from '../../../sample-images/render/plant/plant-spec.ts';
import {
  type RenderedSilhouette,
  renderSilhouettes,
} from '../../../sample-images/render/render-silhouette.ts';
import { SIDE_PX, type StemPlant } from './stem-plants.ts';

/** Raise it when renders or what is kept of them change. */
const FORMAT = 4;
const CACHE = join(tmpdir(), 'rondure-stems');

/** Renders a plant at several turns, or takes it from the system's folder for passing files, where it is kept. */
export function renderedSitting(
  plant: StemPlant,
  turnsDeg: readonly number[],
  cuts: readonly Cut[] = [],
): RenderedSilhouette[] {
  const wish = { ...plant, week: 0, cuts, widthPx: SIDE_PX, heightPx: SIDE_PX };
  const name = createHash('sha256')
    .update(JSON.stringify([wish, turnsDeg, FORMAT]))
    .digest('hex')
    .slice(0, 16);
  mkdirSync(CACHE, { recursive: true });
  const file = join(CACHE, `${name}.gz`);
  if (existsSync(file)) return unpacked(gunzipSync(readFileSync(file)));
  const views = renderSilhouettes(wish, turnsDeg);
  writeFileSync(`${file}.part`, gzipSync(packed(views), { level: 4 }));
  renameSync(`${file}.part`, file);
  return views;
}

/** Truths as one line of JSON, then the masks one after another. */
function packed(views: readonly RenderedSilhouette[]): Buffer {
  const truths = Buffer.from(`${JSON.stringify(views.map(({ canopy: _, ...facts }) => facts))}\n`);
  return Buffer.concat([truths, ...views.map(({ canopy }) => canopy.data)]);
}

function unpacked(bytes: Buffer): RenderedSilhouette[] {
  const end = bytes.indexOf('\n');
  const facts: Omit<RenderedSilhouette, 'canopy'>[] = JSON.parse(bytes.toString('utf8', 0, end));
  const area = SIDE_PX * SIDE_PX;
  return facts.map((fact, k) => ({
    ...fact,
    canopy: {
      width: SIDE_PX,
      height: SIDE_PX,
      data: new Uint8Array(bytes.subarray(end + 1 + k * area, end + 1 + (k + 1) * area)),
    },
  }));
}
