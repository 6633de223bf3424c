import { resizePlane } from '../opencv/pictures.ts';
import { dilateMask } from '../raster/discs.ts';
import { type Mask, maskArea } from '../raster/raster.ts';
import { strokeEvidence } from './apply-strokes.ts';
import { certaintyOf, confidenceOf, unsureZones } from './certainty.ts';
import { type Evidence, joinEvidence } from './evidence.ts';
import type { FoundPlant, NoPlant } from './found-plant.ts';
import { edgeContact } from './framing.ts';
import type { Gathered } from './gather-evidence.ts';
import { NOTES, noPlant } from './hints.ts';
import { partMap } from './part-map.ts';
import { edgeWidthPx, isTooDark } from './photo-quality.ts';
import { type DrawnEdge, refineEdge } from './refine-edge.ts';
import type { Stroke } from './stroke.ts';

/** Least canopy, share of the photo. */
const LEAST_CANOPY_SHARE = 0.0004;
/** Doubt of the outline, share of the longer side, that is worth a note. */
const FAINT_EDGE_SHARE = 0.002;
/** Doubt of an outline drawn without a known backdrop, px of the decision copy. */
const BUSY_DOUBT_PX = 1;
/** Width of the sharpest edges, px of the decision copy, above which a photo is unsharp, and too blurred to measure. */
const UNSHARP_PX = 4.2;
const BLURRED_PX = 7;

/**
 * Decides on the canopy: joins the voices with the grower's strokes and draws the outline on the full raster.
 *
 * @param gathered what the voices say
 * @param strokes the grower's strokes, px of the raster, oldest first; a later one wins where two cross
 * @returns the canopy and all that is known of it, px of the raster; or the reason why none is given
 */
export function decidePlant(gathered: Gathered, strokes: readonly Stroke[]): FoundPlant | NoPlant {
  const { door, raster, picture, place, pot } = gathered;
  const drawnOn = strokeEvidence(gathered, strokes);
  const odds = drawnOn === null ? gathered.canopy : joinEvidence(gathered.canopy, drawnOn);
  const first = maskOf(odds);
  if (maskArea(first) < LEAST_CANOPY_SHARE * first.data.length) return noPlant('no-canopy');
  if (isTooDark(picture, first)) return noPlant('too-dark');
  const edgeWidth = edgeWidthPx(door, picture, dilateMask(first, 4));
  if (edgeWidth !== null && edgeWidth > BLURRED_PX) return noPlant('blurred');

  const { canopy, uncertaintyPx } = drawEdge(gathered, first, odds, drawnOn);
  const contact = edgeContact(canopy, pot !== null);

  const notes = [...place.notes];
  if (pot === null) notes.push(NOTES.noPot);
  if (contact.foot) notes.push(NOTES.footCut);
  if (contact.tip) notes.push(NOTES.tipAtEdge);
  const longerSidePx = Math.max(raster.width, raster.height);
  if (place.backdrop !== null && uncertaintyPx > FAINT_EDGE_SHARE * longerSidePx) notes.push(NOTES.faintEdge);
  if (edgeWidth !== null && edgeWidth > UNSHARP_PX) notes.push(NOTES.unsharp);
  const found: FoundPlant = {
    ok: true,
    canopy,
    parts: partMap(door, gathered, canopy),
    pot,
    certainty: certaintyOf(odds),
    unsureZones: unsureZones(door, odds, raster),
    confidence: confidenceOf(odds),
    edgeUncertaintyPx: uncertaintyPx,
    notes,
  };
  if (gathered.twoPlants) return noPlant('two-plants', found);
  return contact.cut ? noPlant('touches-edge', found) : found;
}

function maskOf({ width, height, logOdds }: Evidence): Mask {
  const data = new Uint8Array(logOdds.length);
  for (let i = 0; i < data.length; i++) data[i] = (logOdds[i] as number) > 0 ? 1 : 0;
  return { width, height, data };
}

function drawEdge(
  { door, raster, place, object, unseen }: Gathered,
  first: Mask,
  odds: Evidence,
  drawnOn: Evidence | null,
): DrawnEdge {
  if (place.backdrop !== null) {
    const given = drawnOn === null ? unseen : eitherOf(unseen, maskOf(drawnOn));
    return refineEdge(door, raster, { canopy: first, object, given }, { ...place, backdrop: place.backdrop });
  }
  const { width, height } = raster;
  const fine = resizePlane(door, odds.logOdds, odds, raster);
  const canopy = maskOf({ width, height, logOdds: fine });
  return {
    canopy,
    uncertaintyPx: (BUSY_DOUBT_PX * Math.max(width, height)) / Math.max(odds.width, odds.height),
  };
}

function eitherOf(one: Mask, other: Mask): Mask {
  return { ...one, data: one.data.map((inside, i) => inside | (other.data[i] as number)) };
}
