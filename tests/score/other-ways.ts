import { EVIDENCE_SOURCES, type EvidenceSource } from '../../core/canopy/evidence-sources.ts';
import { DECISION_SIDE_PX } from '../../core/canopy/gather-evidence.ts';
import type { KnownOfPlant } from '../../core/canopy/known.ts';
import { firstGuess } from '../../core/canopy/model/first-guess.ts';
import type { Network } from '../../core/canopy/model/onnx-door.ts';
import type { OpenCvDoor } from '../../core/opencv/door.ts';
import { resizeMask, resizePlane, shrinkRaster } from '../../core/opencv/pictures.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { BASELINE_SIDE_PX, BASELINES } from './baselines/baselines.ts';
import { intersectionOverUnion } from './overlap.ts';
import { noteRow, type Rows } from './rows.ts';
import type { Scene } from './scene.ts';
import { canopyOverlap, cutOurs } from './score-ours.ts';
import type { History } from './series.ts';

/** The network's guess without any other voice, and its time. */
export async function noteNetworkAlone(
  rows: Rows,
  { raster, wanted }: Scene,
  network: Network,
  door: OpenCvDoor,
): Promise<void> {
  const start = performance.now();
  const { width, height, foliage, flower } = await firstGuess(
    shrinkRaster(door, raster, DECISION_SIDE_PX),
    network,
  );
  const ms = performance.now() - start;
  const share = foliage.map((leaf, i) => leaf + (flower[i] as number));
  const fine = resizePlane(door, share, { width, height }, raster);
  const mask: Mask = { ...wanted, data: Uint8Array.from(fine, (value) => (value > 0.5 ? 1 : 0)) };
  noteRow(rows, 'network alone', intersectionOverUnion(mask, wanted), ms);
}

/** The baselines on their own copy, against the mask of that size. */
export function noteBaselines(rows: Rows, { raster, wanted }: Scene, door: OpenCvDoor): void {
  const small = shrinkRaster(door, raster, BASELINE_SIDE_PX);
  const wantedSmall = resizeMask(door, wanted, small);
  for (const { name, cut } of BASELINES) {
    const start = performance.now();
    const mask = cut(small, door);
    noteRow(rows, name, intersectionOverUnion(mask, wantedSmall), performance.now() - start);
  }
}

/** Voices that speak from what was learned at earlier sittings. */
export const FROM_EARLIER: ReadonlySet<EvidenceSource> = new Set(['learned-colour', 'last-outline']);

/**
 * Ours with each voice switched off in turn. The two that speak from earlier sittings are switched off beside ours with
 * those sittings known; the first photo of a plant has none and counts as it is.
 *
 * @param known what is known without earlier sittings
 * @param iou what ours comes to with `known`
 * @param spoke the voices that had something to say in this folder so far; added to
 */
export async function noteSources(
  rows: Rows,
  { raster, wanted }: Scene,
  known: KnownOfPlant,
  { iou, history, spoke }: { iou: number; history: History | null; spoke: Set<EvidenceSource> },
): Promise<void> {
  const cut = async (knowing: KnownOfPlant) => canopyOverlap((await cutOurs(raster, knowing)).found, wanted);
  const switchOff = async (source: EvidenceSource, from: KnownOfPlant, full: number) => {
    const speaks = canSpeak(source, from);
    if (speaks) spoke.add(source);
    noteRow(rows, sourceRow(source), speaks ? await cut({ ...from, without: new Set([source]) }) : full);
  };
  for (const source of EVIDENCE_SOURCES) {
    // The network has its row already.
    if (source !== 'network' && !FROM_EARLIER.has(source)) await switchOff(source, known, iou);
  }
  const withHistory = { ...known, ...history };
  const iouWithHistory = history === null ? iou : await cut(withHistory);
  noteRow(rows, EARLIER_ROW, iouWithHistory);
  for (const source of FROM_EARLIER) await switchOff(source, withHistory, iouWithHistory);
}

export const EARLIER_ROW = 'ours, earlier sittings known';
export const sourceRow = (source: EvidenceSource): string =>
  FROM_EARLIER.has(source) ? `  those known, but no ${source}` : `ours without ${source}`;

function canSpeak(source: EvidenceSource, { empty, colours, lastOutline }: KnownOfPlant): boolean {
  if (source === 'empty-photo') return empty !== null;
  if (source === 'learned-colour') return colours !== null;
  if (source === 'last-outline') return lastOutline !== null;
  return true;
}
