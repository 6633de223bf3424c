/** The calendar day `weeks` after a day `YYYY-MM-DD`, counted by date (UTC is used as plain arithmetic). */
export function weeksAfter(day: string, weeks: number): string {
  const midnight = Date.parse(`${day}T00:00:00Z`);
  return new Date(midnight + weeks * 7 * 86_400_000).toISOString().slice(0, 10);
}
