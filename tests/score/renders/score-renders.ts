import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { exposeRaster } from '../expose-raster.ts';
import { openScene } from '../scene.ts';
import type { Bench } from '../score-folder.ts';
import { cutOurs, type Scored, scoreOurs } from '../score-ours.ts';
import { EXPOSURES, type PlannedRender } from './plan.ts';
import { renderLines } from './render-table.ts';
import { type Rendered, renderedPlan } from './rendered.ts';

/** One cut of one render. */
export interface RenderScore {
  readonly plan: PlannedRender;
  /** Whether the photo of the empty place was at hand. */
  readonly withEmpty: boolean;
  /** Factor of the light by which the finished photo was exposed anew, clipped at white. */
  readonly exposedAfter: number;
  readonly scored: Scored;
}

/** Scores own renders in all their conditions, made first where they are not there yet. */
export async function scoreRenders(
  bench: Bench,
  each: boolean,
  say: (line: string) => void,
): Promise<string[]> {
  const scores: RenderScore[] = [];
  for (const rendered of await renderedPlan(say)) scores.push(...(await scoreRender(rendered, bench)));
  return renderLines(scores, each);
}

async function scoreRender(rendered: Rendered, { network, worst }: Bench): Promise<RenderScore[]> {
  const { plan } = rendered;
  const scene = await openScene(rendered);
  const cut = async (withEmpty: boolean, exposedAfter: number): Promise<RenderScore> => {
    const raster = exposedAfter === 1 ? scene.raster : exposeRaster(scene.raster, exposedAfter);
    const ours = await cutOurs(raster, { ...NOTHING_KNOWN, empty: withEmpty ? scene.empty : null, network });
    const scored = scoreOurs({ ...scene, raster }, ours);
    await worst?.offer(scored.iou, { raster, found: ours.found, wanted: scene.wanted });
    return { plan, withEmpty, exposedAfter, scored };
  };
  network?.forget();
  const scores = [await cut(scene.empty !== null, 1)];
  if (scene.empty !== null) scores.push(await cut(false, 1));
  if (plan.exposure === 1)
    for (const factor of EXPOSURES) scores.push(await cut(scene.empty !== null, factor));
  return scores;
}
