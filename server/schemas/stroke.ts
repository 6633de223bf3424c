import { z } from 'zod';
import type { Stroke } from '../../core/canopy/stroke.ts';

/** What one photo's mending may hold. */
export const STROKE_LIMITS = {
  strokes: 200,
  points: 2000,
  /** How far outside the photo a point may lie, share of the photo's side: a hand runs over the edge. */
  outside: 0.25,
};

/** No photo is as wide: beyond it a number is a mistake, whatever the photo. */
const FARTHEST_PX = 100_000;

const coordinate = z
  .number('Give each point as two numbers, across and down, in px of the photo.')
  .min(-FARTHEST_PX, 'A point of a stroke lies far outside any photo.')
  .max(FARTHEST_PX, 'A point of a stroke lies far outside any photo.');

export const strokeSchema = z.object({
  kind: z.enum(['keep', 'remove'], 'A stroke is either "keep" or "remove".'),
  widthPx: z
    .number('Give the width of the stroke in px of the photo.')
    .min(0.5, 'A stroke must be at least half a px wide.')
    .max(FARTHEST_PX, 'A stroke cannot be wider than the photo.'),
  pointsPx: z
    .array(
      z
        .tuple(
          [coordinate, coordinate],
          'Give each point as two numbers, across and down, in px of the photo.',
        )
        .readonly(),
      'Give the points of the stroke as a list.',
    )
    .min(1, 'A stroke needs at least one point.')
    .max(
      STROKE_LIMITS.points,
      `A stroke may have ${STROKE_LIMITS.points} points at most. Lift the brush and draw on in a new stroke.`,
    )
    .readonly(),
}) satisfies z.ZodType<Stroke>;

/** All strokes of a photo, oldest first: the whole list each time. */
export const strokesFormSchema = z.object({
  strokes: z
    .array(strokeSchema, 'Give the strokes as a list; an empty one takes all strokes away.')
    .max(
      STROKE_LIMITS.strokes,
      `A photo may have ${STROKE_LIMITS.strokes} strokes at most. Undo some, or mend with a broader brush.`,
    ),
});

/** The strokes of a photo of this size: no wider than it, and on it or a little outside. */
export function strokesOn({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  const near = (value: number, sidePx: number) =>
    value >= -STROKE_LIMITS.outside * sidePx && value <= (1 + STROKE_LIMITS.outside) * sidePx;
  return strokesFormSchema.superRefine(({ strokes }, check) => {
    for (const [at, stroke] of strokes.entries()) {
      if (stroke.widthPx > Math.max(widthPx, heightPx)) {
        check.addIssue({
          code: 'custom',
          path: ['strokes', at, 'widthPx'],
          message: 'A stroke cannot be wider than the photo.',
        });
      }
      const astray = stroke.pointsPx.findIndex(([x, y]) => !near(x, widthPx) || !near(y, heightPx));
      if (astray >= 0) {
        check.addIssue({
          code: 'custom',
          path: ['strokes', at, 'pointsPx', astray],
          message: `A point of stroke ${at + 1} lies far outside the photo, which is ${widthPx} × ${heightPx} px. Draw on the photo.`,
        });
      }
    }
  });
}

export const acceptedFormSchema = z.object({
  accepted: z.boolean('Say whether the outline is right: true or false.'),
});
