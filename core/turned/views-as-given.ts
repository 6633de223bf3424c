import type { Supposition } from './supposition.ts';
import type { SceneView } from './turned-scene.ts';

/** Turns by the views' places in the list as given; views left out have none. */
export function turnsAsGiven(views: readonly SceneView[]): number[] {
  const turnsDeg: number[] = [];
  for (const { index, view } of views) turnsDeg[index] = view.turnDeg;
  return turnsDeg;
}

/** A supposition on the scene's views, with views counted as they were given. */
export function countedAsGiven(supposed: Supposition, views: readonly SceneView[]): Supposition {
  const place = (view: number) => (views[view] as SceneView).index;
  return supposed.kind === 'views-swapped'
    ? { ...supposed, view: place(supposed.view), other: place(supposed.other) }
    : { ...supposed, view: place(supposed.view) };
}
