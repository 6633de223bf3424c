/**
 * How often the clocks of this machine's zone show a local time: `never` in the gap when they are put forward, `twice` in
 * the fold when they are put back.
 *
 * @param localTime `YYYY-MM-DDTHH:MM:SS`, no zone
 */
export function timesShown(localTime: string): 'never' | 'once' | 'twice' {
  const [year, month, date, hour, minute, second] = localTime.split(/\D/).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const moment = new Date(year, month - 1, date, hour, minute, second);
  if (wallClock(moment) !== localTime) return 'never';
  const isShownAgain = PUT_BACK_MINUTES.some((minutes) =>
    [-minutes, minutes].some((by) => wallClock(new Date(moment.getTime() + by * 60_000)) === localTime),
  );
  return isShownAgain ? 'twice' : 'once';
}

/** By how much clocks have been put back; half an hour on Lord Howe Island, two on bases in Antarctica. */
const PUT_BACK_MINUTES = [30, 60, 120];

function wallClock(moment: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  const day = `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
  return `${day}T${two(moment.getHours())}:${two(moment.getMinutes())}:${two(moment.getSeconds())}`;
}
