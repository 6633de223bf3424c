import { z } from 'zod';

const width = (what: string) =>
  z
    .number(`Give ${what} in millimetres, for example 300.`)
    .min(50, 'Less than 50 mm across is no plant to show; give millimetres.')
    .max(3000, 'More than 3000 mm across cannot be right; give millimetres.');

/** How a plant's ball to cut to is chosen; for `show` the plant's own show day is counted back from. */
export const cutToSchema = z.discriminatedUnion(
  'kind',
  [
    /** Up to its own ball. */
    z.object({ kind: z.literal('even-up') }),
    z.object({ kind: z.literal('width'), widthMm: width('the width to cut to') }),
    /** The widest that it may be on the day. */
    z.object({ kind: z.literal('show'), widestMm: width('the widest that it may be at the show') }),
  ],
  'Choose how to cut: "even-up", to a "width" of your own, or back from the "show".',
);
export type CutTo = z.infer<typeof cutToSchema>;
