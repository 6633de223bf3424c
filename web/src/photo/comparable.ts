import type { View } from '../../../server/schemas/sitting.ts';

/**
 * Whether a photo's numbers may be compared with others. One from too far off its stand, or one that does not show
 * its stand at all, has its numbers shown but compared with nothing.
 */
export function isComparable({ report, standId }: Pick<View, 'report' | 'standId'>): boolean {
  if (report?.frame) return report.frame.standing !== 'far';
  return standId === null;
}
