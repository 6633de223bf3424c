import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import { maskOfLabels } from '../raster/mask-of-labels.ts';
import type { Mask } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';

/** Odds a part must reach somewhere to be kept at all. */
const SURE_LOG_ODDS = 2.5;
/** Smallest part kept, share of the largest. */
const LEAST_SHARE = 0.002;

/**
 * Decides what stands before the backdrop: every connected part above even odds that is sure somewhere
 * (hysteresis, Canny 1986), without specks. Holes are kept.
 */
export function objectMask(door: OpenCvDoor, evidence: Evidence): Mask {
  const { width, height, logOdds } = evidence;
  const likely: Mask = { width, height, data: new Uint8Array(logOdds.length) };
  for (let i = 0; i < logOdds.length; i++) likely.data[i] = (logOdds[i] as number) > 0 ? 1 : 0;
  const { parts, labels } = maskParts(door, likely);
  const sureOf = new Float32Array(parts.length + 1);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i] as number;
    if (label > 0 && (logOdds[i] as number) > (sureOf[label] as number)) sureOf[label] = logOdds[i] as number;
  }
  const least = Math.max(6, LEAST_SHARE * (parts[0]?.areaPx ?? 0));
  const keeps = new Uint8Array(parts.length + 1);
  for (const { label, areaPx } of parts) {
    keeps[label] = areaPx >= least && (sureOf[label] as number) >= SURE_LOG_ODDS ? 1 : 0;
  }
  return maskOfLabels(labels, keeps, likely);
}

/** Parts this near the main one, share of its longer side, belong to it. */
const NEAR_SHARE = 0.06;

/** The largest part of a mask and what lies near it; for busy places, where other things look like plants too. */
export function mainObject(door: OpenCvDoor, mask: Mask): Mask {
  const { parts, labels } = maskParts(door, mask);
  const [main] = parts;
  if (main === undefined) return mask;
  const reach = NEAR_SHARE * Math.max(main.width, main.height);
  const keeps = new Uint8Array(parts.length + 1);
  for (const part of parts) {
    const acrossGap =
      Math.max(main.left, part.left) - Math.min(main.left + main.width, part.left + part.width);
    const downGap = Math.max(main.top, part.top) - Math.min(main.top + main.height, part.top + part.height);
    if (acrossGap < reach && downGap < reach) keeps[part.label] = 1;
  }
  return maskOfLabels(labels, keeps, mask);
}
