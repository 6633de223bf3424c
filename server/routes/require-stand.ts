import type { Database } from '../store/database.ts';
import { standById } from '../store/stands.ts';
import { RequestProblem } from './problems.ts';

/** Throws the problem unless it is a stand on which something may be put; `null` is none and may be. */
export function requireStand(db: Database, standId: string | null): void {
  if (standId === null) return;
  const stand = standById(db, standId);
  if (stand !== null && !stand.putAway) return;
  const detail =
    stand === null
      ? 'There is no such stand. Choose one of the stands, or none.'
      : `The stand “${stand.name}” is put away. Bring it back first, or choose another.`;
  throw new RequestProblem(422, detail, [{ pointer: '/standId', detail }]);
}
