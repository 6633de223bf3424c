import type { Database } from '../store/database.ts';
import { type ViewRow, viewById } from '../store/views.ts';
import { noSuch, RequestProblem } from './problems.ts';

/** A view that is not removed, or the problem that says so. */
export function liveView(db: Database, id: string): ViewRow {
  const view = viewById(db, id);
  if (view === null) throw noSuch('photo');
  if (view.removedAt !== null) {
    throw new RequestProblem(404, 'This photo was removed. Bring it back first.');
  }
  return view;
}
