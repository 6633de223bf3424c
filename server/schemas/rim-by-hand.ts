import { z } from 'zod';
import type { RimByHand } from '../../core/stand/rim-by-hand.ts';
import { pointPx } from './report.ts';

/** The rim's outer ends as the grower set them, px of the photo as stored upright. */
export const rimByHandSchema = z.object({
  leftPx: pointPx,
  rightPx: pointPx,
}) satisfies z.ZodType<RimByHand>;

/** `null` takes back what was set. */
export const rimFormSchema = z.object({
  rim: z
    .object(
      { leftPx: pointPx, rightPx: pointPx },
      'Give both ends of the rim as two numbers each, across and down, in px of the photo; or null to take back what was set.',
    )
    .nullable(),
});

/** A rim narrower than this share of the photo's width is a slip of the finger. */
const LEAST_WIDTH_SHARE = 0.02;
/** A rim that leans more than this is not the rim of a pot that stands, rise ÷ run. */
const MOST_LEAN = 0.35;

/** The rim on a photo of this size: on it, left end first, wide enough, nearly level. */
export function rimOn({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  return rimFormSchema.superRefine(({ rim }, check) => {
    if (rim === null) return;
    const complain = (message: string) => check.addIssue({ code: 'custom', path: ['rim'], message });
    const { leftPx, rightPx } = rim;
    const isOutside = ([x, y]: readonly [number, number]) => x < 0 || y < 0 || x > widthPx || y > heightPx;
    if (isOutside(leftPx) || isOutside(rightPx)) {
      complain(`Both ends of the rim must lie on the photo, which is ${widthPx} × ${heightPx} px.`);
    } else if (rightPx[0] - leftPx[0] < LEAST_WIDTH_SHARE * widthPx) {
      complain('The left end of the rim must lie at the left of the right end, and the two apart.');
    } else if (Math.abs(rightPx[1] - leftPx[1]) > MOST_LEAN * (rightPx[0] - leftPx[0])) {
      complain('The rim would lean by more than 19°. Set both ends where the rim is widest, at one height.');
    }
  });
}
