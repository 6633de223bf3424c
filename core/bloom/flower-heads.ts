import { PARTS, type PartMap } from '../canopy/found-plant.ts';
import { requirePositive } from '../errors/expect.ts';
import type { PlantKind } from '../plant.ts';

/** How many flower heads are seen, both ends possible. */
export interface FlowerHeads {
  readonly least: number;
  readonly most: number;
}

/** Across a head as it is seen, mm, from small to large. */
export type HeadSize = readonly [smallMm: number, largeMm: number];

/**
 * Size of a head by kind: a truss of a pelargonium, a single flower of a fuchsia. Guesses: no published table was found, and varieties
 * differ; a grower's own figure goes before it.
 */
export function usualHeadSize(kind: PlantKind): HeadSize {
  switch (kind) {
    case 'fuchsia-single':
    case 'fuchsia-semi-double':
      return [20, 40];
    case 'fuchsia-double':
      return [30, 60];
    case 'angel':
    case 'dwarf':
      return [30, 60];
    case 'regal':
    case 'zonal':
    case 'ivy-leaved':
    case 'other':
      return [45, 85];
  }
}

/** A patch of less than this share of a small head is a petal fallen or a head mostly hidden: it may be one or none. */
const LEAST_PATCH = 0.25;
/** Heads that run together hide a part of each other: at the least so much of each shows. A guess, held against renders. */
const SHOWING = 0.6;

/**
 * Number of flower heads seen, as a range.
 *
 * @param patchesMm2 areas of flower that hang together (`flowerPatches`), mm²
 * @param size across a head, mm, above 0
 * @returns least and most; both 0 where no flower was told from leaf
 *
 * How: a patch holds at least as many heads as large ones cover its area, at most as many as small ones do that hide a part of
 * each other, and at least one where it is not tiny.
 *
 * Notes: as seen: heads behind others and at the back are not counted. Where heads run together into one sheet the range is wide, because nothing but
 * area is left to count by.
 *
 * Reference: plain counting by area, our own.
 *
 * Example: three discs of 60 mm with 45–85 mm allowed: at least 3, at most 9.
 */
export function flowerHeads(patchesMm2: readonly number[], size: HeadSize): FlowerHeads {
  const [smallMm2, largeMm2] = size.map((mm) => {
    requirePositive(mm, 'size');
    return (Math.PI / 4) * mm ** 2;
  }) as [number, number];
  let [least, most] = [0, 0];
  for (const areaMm2 of patchesMm2) {
    const isTiny = areaMm2 < LEAST_PATCH * smallMm2;
    least += isTiny ? 0 : Math.max(1, Math.floor(areaMm2 / largeMm2));
    most += isTiny ? areaMm2 / (LEAST_PATCH * smallMm2) : Math.max(1, areaMm2 / (SHOWING * smallMm2));
  }
  return { least, most: Math.max(least, Math.round(most)) };
}

/** Areas of flower px that touch by an edge, px, largest first. */
export function flowerPatches({ width, data }: PartMap): number[] {
  const flower = PARTS.indexOf('flower');
  const open = new Uint8Array(data.length);
  for (let at = 0; at < open.length; at++) open[at] = data[at] === flower ? 1 : 0;
  const areas: number[] = [];
  const next: number[] = [];
  const visit = (at: number) => {
    if (open[at] !== 1) return;
    open[at] = 0;
    next.push(at);
  };
  for (let start = open.indexOf(1); start >= 0; start = open.indexOf(1, start + 1)) {
    let area = 0;
    visit(start);
    for (let at = next.pop(); at !== undefined; at = next.pop()) {
      area++;
      const column = at % width;
      visit(at - width);
      visit(at + width);
      if (column > 0) visit(at - 1);
      if (column < width - 1) visit(at + 1);
    }
    areas.push(area);
  }
  return areas.sort((a, b) => b - a);
}
