import { z } from 'zod';
import { CUT_STATES, type CutMark } from '../schemas/cuts.ts';
import { allRows, type Database, run } from './database.ts';

const markRow = z.object({
  cutId: z.string(),
  state: z.enum(CUT_STATES),
  chosen: z.union([z.literal(0), z.literal(1)]).transform((value) => value === 1),
  note: z.string(),
  /** Where its tip was when it was written: photo px, or mm on the plant. */
  tip: z
    .string()
    .transform((text): unknown => JSON.parse(text))
    .pipe(z.array(z.number())),
});
/** What the grower did or wrote of one cut, and where that cut was. */
export type KeptCutMark = z.infer<typeof markRow>;

export function cutMarksOfSitting(db: Database, sittingId: string): KeptCutMark[] {
  return allRows(
    db,
    markRow,
    'SELECT cut_id AS cutId, state, chosen, note, tip FROM cut_marks WHERE sitting_id = ? ORDER BY rowid',
    sittingId,
  );
}

/** Keeps a mark under the cut's name of now; `replaces` is the name that it was kept under before. */
export function keepCutMark(
  db: Database,
  sittingId: string,
  { cutId, state, chosen, note, tip }: CutMark & Pick<KeptCutMark, 'cutId' | 'tip'>,
  replaces: string | null,
): void {
  db.transaction(() => {
    if (replaces !== null && replaces !== cutId) {
      run(db, 'DELETE FROM cut_marks WHERE sitting_id = ? AND cut_id = ?', sittingId, replaces);
    }
    run(
      db,
      `INSERT INTO cut_marks (sitting_id, cut_id, state, chosen, note, tip) VALUES (?, ?, ?, ?, ?, ?)
       ON CONFLICT (sitting_id, cut_id) DO UPDATE SET state = excluded.state, chosen = excluded.chosen,
         note = excluded.note, tip = excluded.tip`,
      sittingId,
      cutId,
      state,
      chosen ? 1 : 0,
      note,
      JSON.stringify(tip),
    );
  })();
}
