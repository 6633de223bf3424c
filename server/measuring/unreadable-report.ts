import { NO_MEASURES, type PhotoReport } from '../../core/report.ts';

/** The report of a file that is no readable photo: `hint` says what to do, all measures are unknown. */
export function unreadableReport(photo: string, turnDeg: number | null, hint: string): PhotoReport {
  return {
    photo,
    widthPx: null,
    heightPx: null,
    turnDeg,
    status: 'unreadable',
    hint,
    ...NO_MEASURES,
    notes: [],
  };
}
