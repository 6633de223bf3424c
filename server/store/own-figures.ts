import { z } from 'zod';
import type { OwnFigures } from '../../core/season/own-defaults.ts';
import { allRows, type Database, run } from './database.ts';

const row = z.object({ key: z.string(), value: z.number() });

/** The grower's own figures in the table of stops, by key. */
export function ownFigures(db: Database): OwnFigures {
  const rows = allRows(db, row, 'SELECT key, value FROM own_figures');
  return Object.fromEntries(rows.map(({ key, value }) => [key, value]));
}

/** Sets a figure; `null` goes back to the default. */
export function setOwnFigure(db: Database, key: string, value: number | null): void {
  if (value === null) run(db, 'DELETE FROM own_figures WHERE key = ?', key);
  else
    run(
      db,
      'INSERT INTO own_figures (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value',
      key,
      value,
    );
}
