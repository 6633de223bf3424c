import { clockOf } from '../measures/clock.ts';
import { NORMAL_95 } from '../measures/plus-minus.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';

/** How much can be seen through one sector of the canopy. */
export interface GapSector {
  /** Hour in the photo about the ball's centre, 12 on top. */
  readonly clock: number;
  /** Background within the ball ÷ the sector's part of the ball above the rim, 0–1. */
  readonly gapFraction: number;
  /** 95 % repeatability, as far as the outline's doubt goes. */
  readonly plusMinus: number;
  /** Much thinner than the rest: beyond both plus-minus. */
  readonly isThin: boolean;
}

/** Where light falls through a canopy. */
export interface Gaps {
  /** Sectors with enough of the ball above the rim, clockwise from 12. */
  readonly sectors: readonly GapSector[];
  /** Background in the lowest third of the canopy above the rim, within its width, 0–1. */
  readonly openBase: number;
  readonly openBasePlusMinus: number;
  /** Canopy within the ball ÷ the ball, above the rim: 1 is without a gap. */
  readonly tightness: number;
  readonly tightnessPlusMinus: number;
}

/** The circle the canopy should fill and the rim it stands over, px. */
export interface GapPlace {
  readonly centrePx: PointPx;
  readonly radiusPx: number;
  /** `null` without a pot: then the whole ball counts. */
  readonly rimYPx: number | null;
  /** One standard deviation of the outline's place. */
  readonly edgePx: number;
}

const SECTORS = 12;
/** A sector with less of its ball above the rim says nothing. */
const LEAST_SECTOR_SHARE = 0.3;
/** A sector is thin when it has so much more gap than the middle one. */
const THIN_BY = 0.1;
const BASE_SHARE = 1 / 3;
/** The hour is asked for once in so many px of a row, where it stays. */
const HOUR_STRIDE_PX = 16;

/**
 * Gaps of a canopy by where they stand, its open base and its tightness.
 *
 * @param silhouette px
 * @param place ball, rim and doubt of the outline, px
 * @returns shares 0–1; `null` when nothing of the ball stands above the rim
 *
 * Definition: what is background inside the ball and above the rim, sector by sector of 30°: holes one can see through and bays of the outline
 * alike. The open base is the background in the lowest third of the canopy's height above the rim, between the canopy's left and right
 * ends there or higher up: the way by which light reaches the base.
 *
 * How: the plus-minus moves every edge between leaf and background by the outline's doubt: 1.96 × doubt × length of edge ÷ area, edges moving
 * alike.
 *
 * Notes: as seen from one side. A plant whose ball the camera sees through only at its edge reads tight in the middle however loose it is.
 *
 * Reference: gap fraction, as for light through canopies since Monsi and Saeki (1953) (from memory); sectors are our own.
 *
 * Example: a full disc on its rim has no gap; with a bay cut out at the right, 3 o'clock is thin.
 */
export function gapsOf({ mask }: Silhouette, place: GapPlace): Gaps | null {
  const sums = Array.from({ length: SECTORS }, () => ({ all: 0, open: 0, edge: 0, whole: 0 }));
  const [centreX, centreY] = place.centrePx;
  const lowest = Math.min(mask.height, Math.round(place.rimYPx ?? mask.height));
  const reach = Math.ceil(place.radiusPx);
  const left = Math.round(centreX - 0.5);
  const top = Math.round(centreY - 0.5);
  const within = place.radiusPx ** 2;
  const hourAt = (dx: number, dy: number) => clockOf(Math.atan2(dy, dx)) % SECTORS;
  for (let dy = -reach; dy <= reach; dy++) {
    let hour = 0;
    let hourUntil = Number.NEGATIVE_INFINITY;
    for (let dx = -reach; dx <= reach; dx++) {
      if (dx * dx + dy * dy > within) continue;
      // Along a row the hours come in stretches; where the next px that far on has the same one, so have those between.
      if (dx > hourUntil) {
        hour = hourAt(dx, dy);
        const far = Math.min(reach, dx + HOUR_STRIDE_PX);
        const isOneHour = hourAt(far, dy) === hour;
        hourUntil = isOneHour ? far : dx;
      }
      const sector = sums[hour] as (typeof sums)[number];
      sector.whole++;
      const x = left + dx;
      const y = top + dy;
      if (y >= lowest) continue;
      sector.all++;
      if (!isCanopy(mask, x, y)) sector.open++;
      sector.edge += edgesAt(mask, x, y);
    }
  }
  const seen = sums.filter(({ all, whole }) => all > LEAST_SECTOR_SHARE * whole);
  const all = sums.reduce((sum, sector) => sum + sector.all, 0);
  if (all === 0 || seen.length === 0) return null;
  const fractions = seen.map(({ open, all: area }) => open / area).sort((a, b) => a - b);
  const middle = fractions[fractions.length >> 1] as number;
  const doubtOf = (edge: number, area: number) => (NORMAL_95 * place.edgePx * edge) / area;
  const sectors = sums.flatMap((sector, clock) => {
    if (sector.all <= LEAST_SECTOR_SHARE * sector.whole) return [];
    const gapFraction = sector.open / sector.all;
    const plusMinus = doubtOf(sector.edge, sector.all);
    return [
      {
        clock: clock === 0 ? SECTORS : clock,
        gapFraction,
        plusMinus,
        isThin: gapFraction - middle > Math.max(THIN_BY, plusMinus),
      },
    ];
  });
  const open = sums.reduce((sum, sector) => sum + sector.open, 0);
  const edge = sums.reduce((sum, sector) => sum + sector.edge, 0);
  const base = openBaseOf(mask, lowest, place.edgePx);
  if (base === null) return null;
  return {
    sectors: [...sectors].sort((one, other) => (one.clock % SECTORS) - (other.clock % SECTORS)),
    ...base,
    tightness: 1 - open / all,
    tightnessPlusMinus: doubtOf(edge, all),
  };
}

function openBaseOf(mask: Mask, lowest: number, edgePx: number) {
  let [top, left, right] = [lowest, mask.width, -1];
  for (let y = 0; y < lowest; y++) {
    for (let x = 0; x < mask.width; x++) {
      if (!isCanopy(mask, x, y)) continue;
      if (y < top) top = y;
      if (x < left) left = x;
      if (x > right) right = x;
    }
  }
  if (right < left) return null;
  const from = Math.round(lowest - (lowest - top) * BASE_SHARE);
  let [all, open, edge] = [0, 0, 0];
  for (let y = from; y < lowest; y++) {
    for (let x = left; x <= right; x++) {
      all++;
      if (!isCanopy(mask, x, y)) open++;
      edge += edgesAt(mask, x, y);
    }
  }
  return all === 0 ? null : { openBase: open / all, openBasePlusMinus: (NORMAL_95 * edgePx * edge) / all };
}

/** Edges of a px towards its right and lower neighbour. */
function edgesAt(mask: Mask, x: number, y: number): number {
  const here = isCanopy(mask, x, y);
  return (here === isCanopy(mask, x + 1, y) ? 0 : 1) + (here === isCanopy(mask, x, y + 1) ? 0 : 1);
}

function isCanopy({ width, height, data }: Mask, x: number, y: number): boolean {
  return x >= 0 && y >= 0 && x < width && y < height && data[y * width + x] === 1;
}
