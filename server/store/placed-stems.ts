import { z } from 'zod';
import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import { placedStemsSchema } from '../schemas/placed-stems.ts';
import { type Database, oneRow, run } from './database.ts';
import type { SittingJoining } from './joinings.ts';

const row = z.object({ stems: z.string().transform((text): unknown => JSON.parse(text)) });

/** The stems that were placed from today's views of a sitting; `null` when they are to be placed, or were kept in an older form. */
export function keptStems(
  db: Database,
  { sittingId, facts }: Pick<SittingJoining, 'sittingId' | 'facts'>,
): StemsOfSitting | null {
  const kept = oneRow(
    db,
    row,
    'SELECT stems FROM placed_stems WHERE sitting_id = ? AND facts = ?',
    sittingId,
    facts,
  );
  const read = placedStemsSchema.safeParse(kept?.stems);
  return read.success ? read.data : null;
}

export function keepStems(
  db: Database,
  { sittingId, facts }: Pick<SittingJoining, 'sittingId' | 'facts'>,
  stems: StemsOfSitting,
): void {
  run(
    db,
    `INSERT INTO placed_stems (sitting_id, facts, stems) VALUES (?, ?, ?)
     ON CONFLICT (sitting_id) DO UPDATE SET facts = excluded.facts, stems = excluded.stems`,
    sittingId,
    facts,
    JSON.stringify(stems),
  );
}
