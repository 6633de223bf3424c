import { decidePlant } from '../../core/canopy/decide-plant.ts';
import { type FoundPlant, type NoPlant, PARTS } from '../../core/canopy/found-plant.ts';
import { type Gathered, gatherEvidence } from '../../core/canopy/gather-evidence.ts';
import type { KnownOfPlant } from '../../core/canopy/known.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { intersectionOverUnion } from './overlap.ts';
import { type RimErrors, rimErrors } from './rim-errors.ts';
import type { Scene } from './scene.ts';

/** One photo cut by Rondure. */
export interface OurCut {
  readonly gathered: Gathered | NoPlant;
  readonly found: FoundPlant | NoPlant;
  readonly ms: number;
}

/** How one photo came out, without its pictures. */
export interface Scored {
  readonly name: string;
  /** Intersection over union, of the cut-out, also where the photo was refused; 0 when nothing was cut out. */
  readonly iou: number;
  /** The same for plant and pot together; `null` without such a mask. */
  readonly iouWithPot: number | null;
  readonly ms: number;
  /** Why it was not measured; `null` when it was. */
  readonly refused: NoPlant['reason'] | null;
  readonly confidence: number | null;
  readonly potWidthPx: number | null;
  readonly edgeUncertaintyPx: number | null;
  readonly rim: RimErrors | null;
}

export async function cutOurs(raster: Scene['raster'], known: KnownOfPlant): Promise<OurCut> {
  const start = performance.now();
  const gathered = await gatherEvidence(raster, known);
  const found = gathered.ok ? decidePlant(gathered, []) : gathered;
  return { gathered, found, ms: performance.now() - start };
}

/** What was cut out, also where the photo was refused: the outline is scored, not the refusal. */
export function cutOutOf(found: FoundPlant | NoPlant): FoundPlant | null {
  return found.ok ? found : found.cutOut;
}

/** Overlap with the wanted canopy; 0 when none was found. */
export function canopyOverlap(found: FoundPlant | NoPlant, wanted: Mask): number {
  const cutOut = cutOutOf(found);
  return cutOut === null ? 0 : intersectionOverUnion(cutOut.canopy, wanted);
}

export function scoreOurs(scene: Scene, { found, ms }: OurCut): Scored {
  const { wanted, wantedWithPot } = scene;
  const head = { name: scene.pair.name, iou: canopyOverlap(found, wanted), ms };
  const refused = found.ok ? null : found.reason;
  const cutOut = cutOutOf(found);
  if (cutOut === null) {
    const iouWithPot = wantedWithPot === null ? null : 0;
    const nothing = { confidence: null, potWidthPx: null, edgeUncertaintyPx: null, rim: null };
    return { ...head, iouWithPot, refused, ...nothing };
  }
  const { pot, confidence, edgeUncertaintyPx } = cutOut;
  return {
    ...head,
    iouWithPot: wantedWithPot === null ? null : intersectionOverUnion(plantWithPot(cutOut), wantedWithPot),
    refused,
    confidence,
    potWidthPx: pot === null ? null : pot.rimRightPx[0] - pot.rimLeftPx[0],
    edgeUncertaintyPx,
    rim: rimErrors(scene, pot),
  };
}

/** All that is not background: leaf, flower, pot, soil and support. */
function plantWithPot({ parts }: FoundPlant): Mask {
  const background = PARTS.indexOf('background');
  return { ...parts, data: parts.data.map((part) => (part === background ? 0 : 1)) };
}
