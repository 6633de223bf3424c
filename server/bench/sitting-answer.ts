import type { Sitting } from '../schemas/sitting.ts';
import type { ViewRow } from '../store/views.ts';
import { viewAnswer } from './view-answer.ts';

/** Puts views that come sorted by day under their sittings, as the screen gets them. */
export function sittingAnswers(views: readonly ViewRow[]): Sitting[] {
  const sittings = new Map<string, ViewRow[]>();
  for (const view of views) {
    const together = sittings.get(view.sittingId);
    if (together) together.push(view);
    else sittings.set(view.sittingId, [view]);
  }
  return [...sittings.values()].map((together) => {
    const { sittingId, plantId, day, standId, standVersion } = together[0] as ViewRow;
    return {
      id: sittingId,
      plantId,
      day,
      standId,
      standVersion,
      views: together.map(viewAnswer),
      turned: null,
      turnedState: together.length < 2 ? 'one-view' : 'waiting',
      turnedViewIds: [],
    };
  });
}
