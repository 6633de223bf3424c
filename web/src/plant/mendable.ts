import type { PhotoStatus } from '../../../core/report.ts';
import type { View } from '../../../server/schemas/sitting.ts';

/** What strokes can help: a plant not found, or cut wrong. They cannot help a photo too dark or blurred to read. */
const MENDABLE: ReadonlySet<PhotoStatus> = new Set(['measured', 'no-canopy', 'touches-edge', 'two-plants']);

export function isMendable({ state, report }: View): boolean {
  return state === 'measured' && report !== null && MENDABLE.has(report.status);
}
