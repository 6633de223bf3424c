import { dayInWords } from '../day/day-in-words.ts';
import type { TrendSegment } from '../trend/trend.ts';
import type { GrowthRates } from './growth-rates.ts';

/**
 * How fast a canopy grows, in a sentence; only what the test tells is called growth.
 *
 * Example: "Since 2 March 2027: 4.0 mm a week higher (2.8 to 5.1), 6.2 mm a week wider (4.9 to 7.6)."
 */
export function growthRateWords({ height, width, area }: GrowthRates): string {
  const segment = height ?? width ?? area;
  if (segment === null) return 'No sitting has a scale yet, so growth cannot be told in millimetres.';
  if (segment.direction === null) return segment.why;
  const told = [
    rateInWords(height, 'mm a week', ['higher', 'lower']),
    rateInWords(width, 'mm a week', ['wider', 'narrower']),
    rateInWords(area, 'cm² a week', ['larger as seen', 'smaller as seen']),
  ].filter((words) => words !== null);
  const since = `Since ${dayInWords(segment.fromDay)}`;
  return told.length === 0
    ? `${since} no change in height or spread that the sittings can tell.`
    : `${since}: ${told.join(', ')}.`;
}

function rateInWords(
  segment: TrendSegment | null,
  unit: string,
  [more, less]: readonly [string, string],
): string | null {
  if (segment?.slopePerWeek == null || segment.interval95 === null) return null;
  if (segment.direction !== 'rising' && segment.direction !== 'falling') return null;
  const [low, high] = segment.interval95;
  const [from, to] = segment.direction === 'rising' ? [low, high] : [-high, -low];
  const way = segment.direction === 'rising' ? more : less;
  return `${Math.abs(segment.slopePerWeek).toFixed(1)} ${unit} ${way} (${from.toFixed(1)} to ${to.toFixed(1)})`;
}
