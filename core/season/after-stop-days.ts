/**
 * How long what follows a stop lasts, days from the stop on.
 *
 * Reference: about a month until shoots can be stopped again: fuchsia society newsletter, April 2001. No water for about a week after a
 * hard stop, 4–5 days at the least: common practice, no source. Dry air: Hausbeck and Pennypacker (1991), Plant Disease 75:1168, where
 * fresh cuts kept dry for one day took less stem blight, for three days less still. Looking for breaks after one to two weeks: common
 * practice, no source.
 */
export const AFTER_STOP = {
  breakDays: 28,
  dryDays: 7,
  leastDryDays: 4,
  freshDays: 3,
  lookForBreaks: { fromDays: 7, toDays: 14 },
} as const;
