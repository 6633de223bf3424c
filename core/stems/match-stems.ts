import { bestSphere, type Sphere } from '../turned/best-sphere.ts';
import { degOf, wholeTurn } from '../turned/circular-statistics.ts';
import { distinctDirections } from '../turned/lopsidedness-vector.ts';
import type { SceneView, TurnedScene } from '../turned/turned-scene.ts';
import { bareSitting } from './bare-sitting.ts';
import { SEEN_OUTERMOST } from './crown.ts';
import { LONG_STEM_DEFAULTS } from './long-stems.ts';
import { type MatchedTips, matchTips } from './match-tips.ts';
import { crownOfView, placedTips, sightLinesOf } from './placed-tip.ts';
import type { Stem3D } from './stem-3d.ts';

/** The long stems of a turned sitting. */
export interface StemsOfSitting {
  readonly stems: readonly Stem3D[];
  /** The ball on which the other tips end, mm; `null` when it cannot be told. */
  readonly crown: Sphere | null;
  readonly notes: readonly string[];
}

/** A tip must stand out by so much to be worth a knife, mm; on small plants, whose leaves are small, by a share of the radius. */
const LEAST_EXCESS_MM = 22;
const LEAST_EXCESS_SHARE = 0.25;
/** A tip that one view shows must be seen to stand out by this share of it, not only supposed to. */
const SEEN_SHARE = 0.5;
/** Leaves differ from view to view by so much, one standard deviation, share of the radius. */
const LEAF_SD = 0.025;
const NORMAL_95 = 1.96;

/**
 * Long stems of a turned sitting, placed in the plant's space.
 *
 * @param scene views of known turn with their outlines (`turnedScene`)
 * @returns stems, longest first, with the crown; what cannot be known is said in `notes`
 *
 * How: the crowns of all views give one ball; the tips outside it are matched from view to view by height and by the turn (`matchTips`; on a bare plant
 * `matchBareTips`).
 *
 * Notes: lengths are known on bare plants only. A stem that every view hides is not seen.
 */
export function matchStems({ views, unit, usualRadius }: TurnedScene): StemsOfSitting {
  if (unit !== 'mm') return nothing('A view has no scale, so long stems cannot be placed on the plant.');
  if (distinctDirections(views.map(({ view }) => view.turnDeg)) < 2) {
    return nothing(
      'One direction shows no depth, so long stems are told as in a single photo. Add a photo after a quarter turn.',
    );
  }
  const found = bareSitting(views, usualRadius) ?? leafySitting(views);
  if (found === null) return nothing('Too little of the outlines is seen to say where the tips end.');
  const stems = found.stems
    .map((one) => stemOf(one, views, found.crown))
    .sort((a, b) => b.excessMm - a.excessMm);
  return { stems, crown: found.crown, notes: [...found.notes, ...unsureNotes(stems)] };
}

interface StemsInSpace {
  readonly stems: readonly (MatchedTips & { readonly length: number | null })[];
  readonly crown: Sphere;
  readonly notes: readonly string[];
}

/** Long stems of a plant in leaf. */
function leafySitting(views: readonly SceneView[]): StemsInSpace | null {
  const crown = crownOfSitting(views);
  if (crown === null) return null;
  const matched = matchTips(
    views.flatMap((view, place) => placedTips(view, place, crown)),
    views.map(({ field }) => field),
    crown,
  );
  const leastShoot = Math.min(LEAST_EXCESS_MM, LEAST_EXCESS_SHARE * crown.radius);
  const stems = matched
    .filter(({ tips, excess }) => {
      const least = isShoulder(tips) ? LONG_STEM_DEFAULTS.leastShoulder * crown.radius : leastShoot;
      return excess >= least && Math.max(...tips.map(({ passes }) => passes)) >= SEEN_SHARE * least;
    })
    .map((one) => ({ ...one, excessSd: Math.hypot(one.excessSd, LEAF_SD * crown.radius), length: null }));
  return { stems, crown, notes: [] };
}

/** The ball on which the tips end, from the crowns of all views. */
function crownOfSitting(views: readonly SceneView[]): Sphere | null {
  const crowns = views.flatMap((scene) => {
    const crown = crownOfView(scene);
    return crown === null ? [] : [{ scene, crown, unit: scene.sight.unitPerPx }];
  });
  if (crowns.length < 2) return null;
  const mean = (of: (one: (typeof crowns)[number]) => number) =>
    crowns.reduce((sum, one) => sum + of(one), 0) / crowns.length;
  // Every line through a tip passes the ball's centre at its radius, wherever along it the tip lies.
  const fitted = bestSphere(
    crowns.flatMap(({ scene, crown }) => sightLinesOf(scene, crown.tipsPx)),
    {
      centre: [0, 0, mean(({ scene, crown, unit }) => (scene.view.rimYPx - crown.centre[1]) * unit)],
      radius: mean(({ crown, unit }) => crown.radius * unit),
    },
    false,
  );
  if (fitted === null) return null;
  const uneven = mean(({ crown, unit }) => crown.unevenPx * unit);
  return { centre: fitted.centre, radius: fitted.radius - SEEN_OUTERMOST * uneven };
}

function stemOf(
  { tips, place, excess, excessSd, length }: StemsInSpace['stems'][number],
  views: readonly SceneView[],
  crown: Sphere,
): Stem3D {
  const [cu, cv, ch] = crown.centre;
  const away = Math.hypot(place[0] - cu, place[1] - cv, place[2] - ch);
  const out = (crown.radius + excess) / away;
  const [u, v, h] = [cu + out * (place[0] - cu), cv + out * (place[1] - cv), ch + out * (place[2] - ch)];
  const seen = [...new Set(tips.map(({ view }) => view))].map((view) => views[view] as SceneView);
  return {
    azimuthDeg: wholeTurn(degOf(Math.atan2(v, u))),
    elevationDeg: degOf(Math.atan2(h - ch, Math.hypot(u - cu, v - cv))),
    lengthMm: length,
    excessMm: excess,
    plusMinusMm: NORMAL_95 * excessSd,
    kind: isShoulder(tips) ? 'shoulder' : 'shoot',
    seenIn: seen.map(({ index }) => index).sort((a, b) => a - b),
    unsure: distinctDirections(seen.map(({ view }) => view.turnDeg)) < 2,
    tipMm: [u, v, h],
  };
}

function isShoulder(tips: MatchedTips['tips']): boolean {
  return tips.every(({ kind }) => kind === 'shoulder');
}

function unsureNotes(stems: readonly Stem3D[]): string[] {
  const unsure = stems.filter((stem) => stem.unsure).length;
  if (unsure === 0) return [];
  const [who, them] = unsure === 1 ? ['One long stem is', 'it'] : [`${unsure} long stems are`, 'them'];
  return [
    `${who} seen from one direction only: how far to the front or back rests on where the other views do not show ${them}.`,
  ];
}

function nothing(note: string): StemsOfSitting {
  return { stems: [], crown: null, notes: [note] };
}
