import type { EarlierSitting } from '../schemas/pages.ts';
import type { SeenSitting } from './seen-sitting.ts';

/** A sitting in a line, for a page that shows newer ones whole. */
export function earlierSitting({ id, day, leftOut, views }: SeenSitting): EarlierSitting {
  return {
    id,
    day,
    leftOut,
    views: views.map(({ id: viewId, standId, turnDeg, state, report, afterWork }) => ({
      id: viewId,
      turnDeg,
      state,
      isMeasured: report?.status === 'measured',
      isOfItsPlace: report?.frame ? report.frame.standing !== 'far' : standId === null,
      afterWork,
    })),
  };
}
