/** Strings that look like words and reach no reader: values of the program, parts of file formats and of answers. One that a screen says does not belong here. */
export const NOT_FOR_READERS: ReadonlySet<string> = new Set([
  // What a photo's first bytes say of its format.
  'PNG',
  '%PDF-',
  'BM',
  'PK',
  // Headers and events of the HTTP interface, a face of a sheet.
  'Accept',
  'ETag',
  'private, no-cache',
  'retry: 2000',
  'event: progress data: {0}',
  'event: remeasuring data: {0}',
  ': still here',
  'Helvetica',
  // Values that the screens tell apart by.
  'all later',
  'held by another',
  'no store',
  'Enter',
  // Names under which fits are kept.
  'bloom curve',
  'bloom against show',
  // A mark of the browser's clock.
  'rondure at hand',
  // A form of dates, a line to be typed as it is, parts of a place that is said whole.
  '2-digit',
  'half past',
  '½ past',
  'npm start -- --network',
]);
