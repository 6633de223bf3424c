import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Mask, PointPx } from '../../core/raster/raster.ts';
import { prunedGraph } from '../../core/stems/prune-spurs.ts';
import { skeletonOf } from '../../core/stems/skeleton.ts';
import { type SkeletonGraph, skeletonGraph } from '../../core/stems/skeleton-graph.ts';
import { smoothedLength } from '../../core/stems/stem-length.ts';
import { signedDistance } from '../../core/turned/signed-distance.ts';
import { askScikitImage, maskOfRuns, PYTHON, type ToldSkeletons } from './skeletons/ask-scikit-image.ts';
import { SKELETON_MASKS } from './skeletons/masks.ts';

/**
 * Skeletons held against scikit-image's `skeletonize` (its Zhang–Suen), on masks drawn for the purpose: from a file written with version 0.19.3, and
 * live where `python3-skimage` is installed.
 */

const SAME_PX = 3;
const SAME_LENGTH = 0.02;

const written: ToldSkeletons = JSON.parse(
  readFileSync(join(import.meta.dirname, 'skeletons/expected.json'), 'utf8'),
);

describe('the skeleton', () => {
  compare('as scikit-image 0.19.3 has it', written);
  if (PYTHON !== undefined) compare('as the installed scikit-image has it', askScikitImage(PYTHON));
  else it.skip('as an installed scikit-image has it: none is installed');
});

function compare(title: string, { skeletons }: ToldSkeletons): void {
  describe(title, () => {
    it('is told of every mask', () => {
      expect(skeletons.map(({ name }) => name)).toEqual(SKELETON_MASKS.map(({ name }) => name));
      expect(skeletons.length).toBeGreaterThanOrEqual(30);
    });

    it.each(skeletons)('of $name has the same ends, joints and length', ({ name, runs }) => {
      const { mask } = SKELETON_MASKS.find((one) => one.name === name) as (typeof SKELETON_MASKS)[number];
      const ours = pruned(mask, skeletonOf(mask));
      // Theirs keeps some corners of stairs; one more thinning takes them off and nothing else.
      const theirs = pruned(mask, skeletonOf(maskOfRuns(runs, mask.width, mask.height)));
      for (const kind of ['end', 'joint'] as const) {
        expect(unlike(placesOf(ours, kind), placesOf(theirs, kind)), `${kind}s of ours`).toEqual([]);
        expect(unlike(placesOf(theirs, kind), placesOf(ours, kind)), `${kind}s of theirs`).toEqual([]);
      }
      expect(Math.abs(lengthOf(ours) / lengthOf(theirs) - 1)).toBeLessThan(SAME_LENGTH);
    });

    it.each(skeletons)(
      'of $name, theirs, is read as their own counting reads it',
      ({ name, runs, ends, joints }) => {
        const { mask } = SKELETON_MASKS.find((one) => one.name === name) as (typeof SKELETON_MASKS)[number];
        const graph = skeletonGraph(maskOfRuns(runs, mask.width, mask.height));
        expect(unlike(placesOf(graph, 'end'), ends, 1.5)).toEqual([]);
        expect(unlike(ends, placesOf(graph, 'end'), 1.5)).toEqual([]);
        expect(unlike(joints, placesOf(graph, 'joint'))).toEqual([]);
      },
    );
  });
}

function pruned(mask: Mask, skeleton: Mask): SkeletonGraph {
  const depths = signedDistance(mask);
  return prunedGraph(skeleton, ([x, y]) => depths[Math.floor(y) * mask.width + Math.floor(x)] as number);
}

function placesOf({ nodes }: SkeletonGraph, kind: 'end' | 'joint'): PointPx[] {
  return nodes.filter((node) => node.kind === kind).map(({ placePx }) => placePx);
}

/** The places that have none of the others near them. */
function unlike(places: readonly PointPx[], others: readonly PointPx[], within = SAME_PX): PointPx[] {
  return places.filter(([x, y]) => !others.some(([ox, oy]) => Math.hypot(x - ox, y - oy) <= within));
}

function lengthOf({ branches }: SkeletonGraph): number {
  return branches.reduce((sum, { pathPx }) => sum + smoothedLength(pathPx), 0);
}
