import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { renderEmptyStand, renderView, type ViewOptions } from '../../../sample-images/render/render-view.ts';
import { greenhouseScenery } from '../../../sample-images/render/stand/greenhouse.ts';
import { encodeMask, encodePhoto } from '../../../sample-images/render/write-photo.ts';
import type { Pair, Truth } from '../folders.ts';
import type { RenderPlace } from './places.ts';
import { type PlannedRender, plannedRenders } from './plan.ts';

/** A render as a photo to score, with what it is a photo of. */
export interface Rendered extends Pair {
  readonly plan: PlannedRender;
}

/** Out of the tracked files; remove it after a change to the renderer. */
const CACHE = fileURLToPath(new URL('../../../node_modules/.cache/rondure-score', import.meta.url));
const TIME = '2026:09:20 10:30:00';

/**
 * The planned renders as files, made where they are not there yet (some five seconds each).
 *
 * A file's name holds a digest of what it was rendered from, so a changed plan is rendered anew.
 */
export async function renderedPlan(say: (line: string) => void): Promise<Rendered[]> {
  mkdirSync(CACHE, { recursive: true });
  const rendered: Rendered[] = [];
  for (const plan of plannedRenders(sceneryOf)) rendered.push(await asFiles(plan, say));
  return rendered;
}

async function asFiles(plan: PlannedRender, say: (line: string) => void): Promise<Rendered> {
  const stem = join(CACHE, `${plan.name}-${digest(plan.view)}`);
  // The truth is written last: where it is, all is.
  if (!existsSync(`${stem}.truth.json`)) {
    const start = performance.now();
    const { raster, canopy, truth } = renderView(plan.view);
    writeFileSync(`${stem}.jpg`, await encodePhoto(raster, TIME, false));
    writeFileSync(`${stem}.canopy.png`, await encodeMask(canopy));
    writeFileSync(`${stem}.truth.json`, JSON.stringify(truth));
    say(`rendered ${plan.name} in ${((performance.now() - start) / 1000).toFixed(1)} s`);
  }
  return {
    name: plan.name,
    photo: `${stem}.jpg`,
    mask: `${stem}.canopy.png`,
    maskWithPot: null,
    empty: plan.emptyView === null ? null : await emptyFile(plan.place, plan.emptyView),
    truth: JSON.parse(readFileSync(`${stem}.truth.json`, 'utf8')) as Truth,
    plan,
  };
}

/** One photo of the empty place serves all blooms. */
async function emptyFile(place: string, view: ViewOptions): Promise<string> {
  const file = join(CACHE, `${place}-empty-${digest(view)}.jpg`);
  if (!existsSync(file)) writeFileSync(file, await encodePhoto(renderEmptyStand(view), TIME, false));
  return file;
}

/** Of everything but the scenery, which is a function of light and pot. */
function digest(options: ViewOptions): string {
  return createHash('sha256').update(JSON.stringify(options)).digest('hex').slice(0, 8);
}

type Scenery = NonNullable<ViewOptions['scenery']>;

const sceneries = new Map<string, Scenery>();

/** Scenery is costly, so it is built when first drawn, and shared by places of the same light and pot height. */
function sceneryOf({ season: { stand, pot } }: RenderPlace): Scenery {
  const key = JSON.stringify([stand.light, pot.heightMm]);
  return (...drawn) => {
    const scenery = sceneries.get(key) ?? greenhouseScenery(stand.light, pot.heightMm);
    sceneries.set(key, scenery);
    return scenery(...drawn);
  };
}
