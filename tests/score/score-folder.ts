import { decidePlant } from '../../core/canopy/decide-plant.ts';
import type { EvidenceSource } from '../../core/canopy/evidence-sources.ts';
import type { FoundPlant, NoPlant } from '../../core/canopy/found-plant.ts';
import { type KnownOfPlant, NOTHING_KNOWN } from '../../core/canopy/known.ts';
import type { Stroke } from '../../core/canopy/stroke.ts';
import type { OpenCvDoor } from '../../core/opencv/door.ts';
import { emptyMask } from '../../core/raster/raster.ts';
import { type CertaintyCheck, noPixels, notePixels } from './certainty-check.ts';
import type { Folder } from './folders.ts';
import { noteBaselines, noteNetworkAlone, noteSources } from './other-ways.ts';
import type { RememberingNetwork } from './remember-network.ts';
import { noteRow, type Rows } from './rows.ts';
import { openScene, type Scene } from './scene.ts';
import { canopyOverlap, cutOurs, cutOutOf, type OurCut, type Scored, scoreOurs } from './score-ours.ts';
import { byDay, openSeries } from './series.ts';
import { nextStroke } from './simulated-hand.ts';
import type { WorstTiles } from './worst-tiles.ts';

/** What scoring works with. */
export interface Bench {
  readonly door: OpenCvDoor;
  readonly network: RememberingNetwork | null;
  readonly worst: WorstTiles | null;
}

/** What is asked beside ours. */
export interface Asked {
  readonly sources: boolean;
  readonly baselines: boolean;
  /** Strokes that the simulated hand draws on each photo. */
  readonly strokes: number;
}

export interface FolderScore {
  readonly name: string;
  readonly photos: readonly Scored[];
  readonly rows: Rows;
  /** Voices that had something to say on some photo; `null` when they were not tried. */
  readonly spoke: ReadonlySet<EvidenceSource> | null;
  readonly pixelCheck: CertaintyCheck;
}

/** Scores a folder photo by photo; no pictures are kept beyond their turn but what a series remembers. */
export async function scoreFolder(folder: Folder, bench: Bench, asked: Asked): Promise<FolderScore> {
  const { door, network, worst } = bench;
  const rows: Rows = new Map();
  const photos: Scored[] = [];
  const spoke = new Set<EvidenceSource>();
  const pixelCheck = noPixels();
  const series = openSeries();
  for (const pair of byDay(folder)) {
    const scene = await openScene(pair);
    const known: KnownOfPlant = { ...NOTHING_KNOWN, empty: scene.empty, network };
    network?.forget();
    const ours = await cutOurs(scene.raster, known);
    const scored = scoreOurs(scene, ours);
    photos.push(scored);
    noteOurs(rows, scored);
    if (network !== null) await noteNetwork(rows, scene, known, { ...bench, network });
    if (asked.sources) {
      const beside = { iou: scored.iou, history: series.before(pair), spoke };
      await noteSources(rows, scene, known, beside);
    }
    if (asked.baselines) noteBaselines(rows, scene, door);
    const mended = mend(rows, scene, ours, { door, strokes: asked.strokes });
    if (ours.found.ok) notePixels(pixelCheck, door, ours.found, scene.wanted);
    await worst?.offer(scored.iou, { ...scene, ...mended });
    if (asked.sources) series.accept(scene, ours.found);
  }
  return { name: folder.name, photos, rows, spoke: asked.sources ? spoke : null, pixelCheck };
}

function noteOurs(rows: Rows, { iou, iouWithPot, ms }: Scored): void {
  noteRow(rows, 'ours', iou, ms);
  if (iouWithPot !== null) noteRow(rows, 'ours, plant with pot', iouWithPot);
}

/** The network's look is timed anew, then serves all further cuts of the photo. */
async function noteNetwork(
  rows: Rows,
  scene: Scene,
  known: KnownOfPlant,
  { door, network }: { door: OpenCvDoor; network: RememberingNetwork },
): Promise<void> {
  const { found, ms } = await cutOurs(scene.raster, { ...known, network: null });
  noteRow(rows, 'ours without network', canopyOverlap(found, scene.wanted), ms);
  network.forget();
  await noteNetworkAlone(rows, scene, network, door);
}

/**
 * After each answer the hand draws once more; the times are those of deciding anew. A photo whose outline was refused
 * is drawn on as one on which nothing was found.
 */
function mend(
  rows: Rows,
  { wanted }: Scene,
  { gathered, found: first }: OurCut,
  { door, strokes: count }: { door: OpenCvDoor; strokes: number },
): { found: FoundPlant | NoPlant; strokes: Stroke[] } {
  const strokes: Stroke[] = [];
  let found = first;
  for (let drawn = 1; drawn <= count; drawn++) {
    const seen = cutOutOf(found)?.canopy ?? emptyMask(wanted.width, wanted.height);
    const stroke = gathered.ok ? nextStroke(door, seen, wanted) : null;
    if (stroke === null || !gathered.ok) {
      noteRow(rows, strokesRow(drawn), canopyOverlap(found, wanted));
      continue;
    }
    strokes.push(stroke);
    const start = performance.now();
    found = decidePlant(gathered, strokes);
    noteRow(rows, strokesRow(drawn), canopyOverlap(found, wanted), performance.now() - start);
  }
  return { found, strokes };
}

const strokesRow = (count: number): string => `ours after ${count} ${count === 1 ? 'stroke' : 'strokes'}`;
