import { passOf, type Sphere } from '../turned/best-sphere.ts';
import type { SilhouetteField } from '../turned/silhouette-field.ts';
import type { SceneView } from '../turned/turned-scene.ts';
import type { PlantPoint } from '../turned/turned-view.ts';
import { bareNotes, LEAST_BARE_EXCESS } from './bare-photo.ts';
import { type BareSkeleton, bareSkeleton, MOST_DEPTH } from './bare-skeleton.ts';
import { type BareTip, type MatchedEnd, matchBareTips } from './match-bare-tips.ts';
import { type MatchedTips, matchTips } from './match-tips.ts';
import { type PlacedTip, sightLinesOf } from './placed-tip.ts';
import { sphereOfTips } from './sphere-of-tips.ts';
import { lengthInSpace, type SeenPath } from './stem-curve.ts';

/** A long stem of a bare plant with what is known of it, plan's unit. */
export interface BareStemInSpace extends MatchedTips {
  /** Along the stem from the rim plane to the tip; `null` where the views' paths do not agree. */
  readonly length: number | null;
}

export interface BareSitting {
  readonly stems: readonly BareStemInSpace[];
  readonly crown: Sphere;
  readonly notes: readonly string[];
}

/** How well a matched end is placed, share of the radius: half a stem's width and the axis misread. */
const END_SD = 0.012;
const USUAL_HEIGHT = 0.7;

/**
 * Long stems of a bare plant from a turned sitting.
 *
 * @param views at least two directions
 * @param usualRadius the plant's ball, plan's unit
 * @returns `null` when a view shows the plant in leaf, or when too few tips are matched
 */
export function bareSitting(views: readonly SceneView[], usualRadius: number): BareSitting | null {
  if (!views.every(({ field }) => isThin(field))) return null;
  const skeletons: BareSkeleton[] = [];
  for (const { view } of views) {
    const skeleton = bareSkeleton(view.canopy, view.rimYPx);
    if (skeleton === null) return null;
    skeletons.push(skeleton);
  }
  const tips = views.flatMap((view, place) => tipsOf(view, place, skeletons[place] as BareSkeleton));
  const ends = matchBareTips(tips, views, usualRadius);
  const crown = sphereOfTips(
    ends.map(({ place }) => place),
    { centre: [0, 0, USUAL_HEIGHT * usualRadius], radius: usualRadius },
  );
  if (crown === null) return null;
  const matched = ends.flatMap((end) => longEnd(end, crown, views, skeletons));
  const known = new Set(ends.flatMap((end) => end.tips));
  const lone = matchTips(
    tips.filter((tip) => !known.has(tip)).map((tip) => ({ ...tip, ...outside(tip, crown) })),
    views.map(({ field }) => field),
    crown,
  ).map((one) => ({ ...one, length: null }));
  const least = LEAST_BARE_EXCESS * crown.radius;
  return {
    stems: [...matched, ...lone].filter(
      ({ excess, tips: seen }) =>
        excess >= least && Math.max(...seen.map(({ passes }) => passes)) >= least / 2,
    ),
    crown,
    notes: bareNotes(
      skeletons.flatMap(({ stems }) => stems),
      skeletons.reduce((sum, { loose }) => sum + loose, 0),
    ),
  };
}

/** Whether nothing of a silhouette is as thick as a plant in leaf: spares the leafy plant a skeleton. */
function isThin({ depths, widest, highest, lowest }: SilhouetteField): boolean {
  const deepest = depths.reduce((most, depth) => Math.max(most, depth), 0);
  return deepest <= MOST_DEPTH * Math.max(widest, (highest - lowest) / 2);
}

function tipsOf(scene: SceneView, place: number, { stems }: BareSkeleton): BareTip[] {
  const { view, sight } = scene;
  const lines = sightLinesOf(
    scene,
    stems.map(({ tipPx }) => tipPx),
  );
  return stems.map(({ tipPx: [x, y] }, stem) => ({
    view: place,
    stem,
    x: (x - view.axisXPx) * sight.unitPerPx,
    y: (view.rimYPx - y) * sight.unitPerPx,
    line: lines[stem] as BareTip['line'],
  }));
}

function outside({ line }: BareTip, { centre, radius }: Sphere): Pick<PlacedTip, 'passes' | 'kind'> {
  return { passes: passOf(line, centre).distance - radius, kind: 'shoot' };
}

function longEnd(
  { tips, place }: MatchedEnd,
  crown: Sphere,
  views: readonly SceneView[],
  skeletons: readonly BareSkeleton[],
): BareStemInSpace[] {
  const excess = distance(place, crown.centre) - crown.radius;
  if (excess < LEAST_BARE_EXCESS * crown.radius) return [];
  const paths = tips.map(({ view, stem }): SeenPath => {
    const { view: taken, sight } = views[view] as SceneView;
    const path = (skeletons[view] as BareSkeleton).stems[stem]?.pathPx ?? [];
    return {
      sight,
      places: [...path]
        .reverse()
        .map(([x, y]) => [(x - taken.axisXPx) * sight.unitPerPx, (taken.rimYPx - y) * sight.unitPerPx]),
    };
  });
  return [
    {
      tips: tips.map((tip) => ({ ...tip, ...outside(tip, crown) })),
      place,
      excess,
      excessSd: END_SD * crown.radius,
      length: lengthInSpace(paths),
    },
  ];
}

function distance(one: PlantPoint, other: PlantPoint): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}
