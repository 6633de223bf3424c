import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import { resizeMask } from '../opencv/pictures.ts';
import { openMask } from '../raster/discs.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';
import type { CertaintyMap, UnsureZone } from './found-plant.ts';

/** The voices are not independent and say more than they know: their sum is read this much softer. */
const CALM = 0.8;
/** Chance of the other side from which a pixel is unsure. */
const UNSURE_CHANCE = 0.25;
const UNSURE_ODDS = Math.log((1 - UNSURE_CHANCE) / UNSURE_CHANCE) / CALM;
/** A zone thinner than this is the outline's own softness, which the edge's doubt covers, px of the decision copy. */
const THIN_PX = 1.5;
/** Smallest zone, share of the canopy, and the most zones told. */
const LEAST_ZONE_SHARE = 0.004;
const MOST_ZONES = 8;

/** Chance that a pixel with these joined log odds is canopy. */
function chanceOf(odds: number): number {
  return 1 / (1 + Math.exp(-CALM * odds));
}

/** How sure the decision is, pixel by pixel: twice the distance of the chance from one half. */
export function certaintyOf({ width, height, logOdds }: Evidence): CertaintyMap {
  const data = new Uint8Array(logOdds.length);
  for (let i = 0; i < data.length; i++) {
    data[i] = Math.round(255 * Math.abs(2 * chanceOf(logOdds[i] as number) - 1));
  }
  return { width, height, data };
}

/** The overlap with the true canopy to be expected if every pixel's chance is right: E|both| ÷ E|either|. */
export function confidenceOf({ logOdds }: Evidence): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < logOdds.length; i++) {
    const odds = logOdds[i] as number;
    const chance = chanceOf(odds);
    if (odds > 0) {
      both += chance;
      either += 1;
    } else either += chance;
  }
  return either === 0 ? 0 : both / either;
}

/** Zones of one side in which the other side is likely enough, those that would change most first, px of the raster. */
export function unsureZones(door: OpenCvDoor, canopy: Evidence, raster: Raster): UnsureZone[] {
  const { width, height, logOdds } = canopy;
  let area = 0;
  for (let i = 0; i < logOdds.length; i++) if ((logOdds[i] as number) > 0) area++;
  const zones: UnsureZone[] = [];
  for (const inCanopy of [true, false]) {
    const data = new Uint8Array(logOdds.length);
    for (let i = 0; i < data.length; i++) {
      const odds = logOdds[i] as number;
      data[i] = odds > 0 === inCanopy && Math.abs(odds) < UNSURE_ODDS ? 1 : 0;
    }
    const unsure: Mask = { width, height, data };
    const wide = openMask(unsure, THIN_PX);
    const { parts, labels } = maskParts(door, wide);
    for (const part of parts) {
      if (part.areaPx < LEAST_ZONE_SHARE * area) break;
      zones.push(zoneOf(door, part, labels, canopy, raster, inCanopy));
    }
  }
  const weight = ({ chance, areaPx }: UnsureZone) => areaPx * chance * (1 - chance);
  return zones.sort((one, other) => weight(other) - weight(one)).slice(0, MOST_ZONES);
}

function zoneOf(
  door: OpenCvDoor,
  part: { label: number; areaPx: number; left: number; top: number; width: number; height: number },
  labels: Int32Array,
  { width, logOdds, height }: Evidence,
  raster: Raster,
  inCanopy: boolean,
): UnsureZone {
  const data = new Uint8Array(part.width * part.height);
  let sum = 0;
  for (let y = 0; y < part.height; y++) {
    for (let x = 0; x < part.width; x++) {
      const i = (part.top + y) * width + part.left + x;
      if (labels[i] !== part.label) continue;
      data[y * part.width + x] = 1;
      sum += chanceOf(logOdds[i] as number);
    }
  }
  const [across, down] = [raster.width / width, raster.height / height];
  const left = Math.round(part.left * across);
  const top = Math.round(part.top * down);
  const size = {
    width: Math.max(1, Math.min(raster.width - left, Math.round(part.width * across))),
    height: Math.max(1, Math.min(raster.height - top, Math.round(part.height * down))),
  };
  const enlarged = resizeMask(door, { width: part.width, height: part.height, data }, size);
  const areaPx = enlarged.data.reduce((all, inside) => all + inside, 0);
  return { mask: { ...enlarged, left, top }, inCanopy, chance: sum / part.areaPx, areaPx };
}
