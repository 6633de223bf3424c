import { type Evidence, MOST_SURE } from './evidence.ts';
import type { Gathered } from './gather-evidence.ts';
import { paintStrokes } from './paint-strokes.ts';
import { spreadLabels } from './spread-labels.ts';
import { type Stroke, scaleStroke } from './stroke.ts';

/** Under a stroke nothing else counts. */
export const STROKE_ODDS = 4 * MOST_SURE;
/** What a stroke says close by, falling to 0 where its reach ends. */
const NEARBY_ODDS = 2 * MOST_SURE;

/**
 * What the grower's strokes say: all under them, and on through what looks alike and was unsure, up to the next edge.
 *
 * @param strokes px of the raster, oldest first; a later one wins where two cross
 * @returns log odds at the decision size; `null` without strokes
 */
export function strokeEvidence(
  { raster, picture, canopy }: Pick<Gathered, 'raster' | 'picture' | 'canopy'>,
  strokes: readonly Stroke[],
): Evidence | null {
  if (strokes.length === 0) return null;
  const { width, height } = picture;
  const scaled = strokes.map((stroke) => scaleStroke(stroke, width / raster.width, height / raster.height));
  const drawn = paintStrokes(scaled, picture);
  const { labels, cost } = spreadLabels(picture, canopy, drawn);
  const logOdds = Float32Array.from(labels, (label, i) =>
    drawn.labels[i] === 0 ? label * NEARBY_ODDS * (1 - (cost[i] as number)) : label * STROKE_ODDS,
  );
  return { width, height, logOdds };
}
