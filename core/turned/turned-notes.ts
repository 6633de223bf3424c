import { turnBetween } from './circular-statistics.ts';
import { guess } from './fault-words.ts';
import { LEAST_VIEWS_TO_JUDGE, type OutlineVerdict } from './find-faults.ts';
import { type LopsidednessFit, SAME_DIRECTION_DEG } from './lopsidedness-vector.ts';
import type { HullReport } from './measure-hull.ts';
import { USUAL_DISTANCE_IN_RADII } from './sight-lines.ts';
import type { LeftOut, TurnedScene } from './turned-scene.ts';
import type { AxisSource, Camera } from './turned-view.ts';
import { countedAsGiven, turnsAsGiven } from './views-as-given.ts';

interface Told {
  readonly scene: TurnedScene;
  readonly directions: number;
  readonly lopsided: LopsidednessFit;
  readonly hull: HullReport | null;
  readonly verdict: OutlineVerdict | null;
  readonly camera: Camera | null;
  /** The rims stand all over the pictures. */
  readonly cameraMoved: boolean;
}

/** Plain sentences on what the sitting can and cannot tell, and why. */
export function turnedNotes({
  scene,
  directions,
  lopsided,
  hull,
  verdict,
  camera,
  cameraMoved,
}: Told): string[] {
  const { views, leftOut, unit } = scene;
  const notes: string[] = [];
  const leftOutFor = (reason: LeftOut['why']) =>
    leftOut.filter(({ why }) => why === reason).map(({ index }) => index + 1);
  const [untold, unmeasured] = [leftOutFor('no-turn'), leftOutFor('not-measured')];
  if (untold.length > 0) notes.push(`Left out until its turn is told: view ${untold.join(', ')}.`);
  if (unmeasured.length > 0) {
    notes.push(
      `Left out because it was not measured or its axis cannot be placed: view ${unmeasured.join(', ')}.`,
    );
  }
  notes.push(...axisNotes(scene));
  if (views.length > directions && directions > 0) {
    notes.push(
      `${views.length} views show ${directions} ${directions === 1 ? 'direction' : 'directions'}: ${whyFewer(scene)} count once. Turning by ${Math.round(1800 / views.length) / 10}° from view to view would show ${views.length}.`,
    );
  }
  if (!lopsided.ok) notes.push(lopsided.hint);
  else if (lopsided.vector.even)
    notes.push('The plant is even within its plus-minus, so no side needs the light more.');
  if (views.length > 0 && directions < 2) {
    notes.push(
      'One direction shows left and right only, so there is no reach all round and no hull. Add a photo after a quarter turn.',
    );
  } else if (directions === 2) {
    notes.push(
      'Two directions tell the heavy side; the plan between them is a rough guess. Four views at 0, 45, 90 and 135 show it well.',
    );
  }
  if (hull !== null) {
    const percent = Math.round((hull.bias - 1) * 1000) / 10;
    notes.push(
      `The hull of a round plant is ${percent} % too large with these views; the corrected volume takes that off.`,
    );
  }
  if (unit === 'px' && views.length > 0) notes.push('A view has no scale, so there are no mm and no ml.');
  if (views.length > 0 && camera !== null && (!('distanceMm' in camera) || unit === 'px')) {
    notes.push(
      `The camera’s distance is not known. It is taken to be ${USUAL_DISTANCE_IN_RADII / 2} times as far as the ball is across, as 1.5 m before a ball of 30 cm: from half or twice as far the hull’s volume is up to 5 % off, its radius 2 %. Tell the stand the distance.`,
    );
  }
  if (views.some(({ view, field }) => view.potHalfWidthPx === null && field.lowest < 0)) {
    notes.push(
      'Canopy hangs below a rim whose width is not known: what the pot hides there is missing from the hull.',
    );
  }
  if (views.length > 1 && verdict === null) {
    notes.push(
      `Wrong turns show in the outlines from ${LEAST_VIEWS_TO_JUDGE} directions on; here they could not be checked.`,
    );
  }
  if (cameraMoved) {
    notes.push(
      'The pot stands elsewhere in most photos, so the camera was moved between them. Set it on a tripod or a shelf; then a pot that was moved can be told.',
    );
  }
  if (verdict !== null) notes.push(...hiddenNotes(scene, verdict));
  if (verdict?.fault) notes.push('The numbers rest on the turns as told; put the fault right first.');
  if (verdict?.stillOff)
    notes.push('With that put right the outlines still do not agree: more than one view may be wrong.');
  return notes;
}

const MOST_HIDDEN_NAMED = 2;

/** What the outlines would not give away because the plant is so round. */
function hiddenNotes({ views }: TurnedScene, { hidden }: OutlineVerdict): string[] {
  if (hidden.length === 0) return [];
  const turnsDeg = turnsAsGiven(views);
  const named = hidden
    .slice(0, MOST_HIDDEN_NAMED)
    .map((supposed) => guess(countedAsGiven(supposed, views), turnsDeg));
  const more = hidden.length > MOST_HIDDEN_NAMED ? ', and the like' : '';
  return [
    `The plant is so round that its outlines would look much the same if ${named.join(', or if ')}${more}: a turn collar would tell.`,
  ];
}

function axisNotes({ views }: TurnedScene): string[] {
  const from = (source: AxisSource) => views.filter(({ view }) => view.axisFrom === source);
  const borrowed = from('other-views').map(({ index }) => index + 1);
  if (from('middles').length > 0) {
    return [
      'Too few views show the pot’s rim, so the plant’s axis is where the views’ middles agree best, and heights count from the lowest leaf.',
    ];
  }
  if (borrowed.length === 0) return [];
  return [`Shows no pot rim and takes its place from the other views: view ${borrowed.join(', ')}.`];
}

/** Views of one turn differ by no more than the pot is set down to, degrees. */
const SAME_TURN_DEG = 5;

/** Why there are fewer directions than views. */
function whyFewer({ views }: TurnedScene): string {
  const turns = views.map(({ view }) => view.turnDeg);
  const apart = turns.flatMap((one, k) =>
    turns.slice(k + 1).map((other) => Math.abs(turnBetween(one, other))),
  );
  const isSame = apart.some((deg) => deg <= SAME_TURN_DEG);
  const isTwin = apart.some((deg) => deg >= 180 - SAME_DIRECTION_DEG);
  if (isSame && !isTwin) return 'views at the same turn show the same and';
  return isSame
    ? 'opposite views are mirror twins, views at the same turn show the same, and they'
    : 'opposite views are mirror twins and';
}
