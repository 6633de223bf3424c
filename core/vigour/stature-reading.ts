import type { Day } from '../day/day.ts';
import type { PhotoStature } from './stature-in-report.ts';
import type { StatureReading } from './wilt.ts';

/**
 * A photo's stature as a reading to be compared with others in the same unit.
 *
 * @param stature of the report
 * @param unit 'mm', or 'px' where the camera stands as it stood
 * @param plusMinusShare 95 % repeatability of a length as a share of itself; `null` when not known
 * @returns `null` in mm without a scale
 */
export function statureReading(
  day: Day,
  stature: PhotoStature,
  unit: 'mm' | 'px',
  plusMinusShare: number | null,
): StatureReading | null {
  if (unit === 'px') {
    const { heightPx: height, spreadPx: spread, middlePx: middle, areaPx: area, reachPx: reach } = stature;
    return { day, height, spread, middle, area, reach, plusMinusShare };
  }
  const { heightMm: height, spreadMm: spread, middleMm: middle, areaMm2: area, reachMm: reach } = stature;
  if (height === null || spread === null || middle === null || area === null || reach === null) return null;
  return { day, height, spread, middle, area, reach, plusMinusShare };
}
