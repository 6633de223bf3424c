import type { Day } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import { exifTags } from './exif-tags.ts';
import { timesShown } from './local-clock.ts';
import { takenAt, writtenTime } from './taken-at.ts';

/**
 * What is odd about the time that a camera wrote, and what to do. The time itself is never moved: a camera's clock has no
 * zone that could be known better than it told.
 *
 * @param receivedOn the day on which the photo came in, by this machine's clock
 */
export function clockNotes(exifBlock: Uint8Array | null, receivedOn: Day): string[] {
  const taken = takenAt(exifBlock);
  if (taken === null) {
    const written = writtenTime(exifBlock);
    if (written === null) return [];
    return [
      `The camera’s clock said ${dayInWords(written.day)}, so it was never set, and the photo stands at the day on which it was sent. Give the photo its day, and set the camera’s clock.`,
    ];
  }
  const notes: string[] = [];
  const [time, on] = [taken.localTime.slice(11, 16), dayInWords(taken.day)];
  if (taken.day > receivedOn) {
    notes.push(
      `The camera’s clock said ${on}, a day that was still to come when the photo was sent. It is taken as it stands: give the photo its day, and set the camera’s clock.`,
    );
  }
  // A camera that told its distance from UTC has told which hour it was.
  if (hasOffset(exifBlock)) return notes;
  switch (timesShown(taken.localTime)) {
    case 'never':
      notes.push(
        `The camera’s clock said ${time} on ${on}, a time that clocks here skipped when they were put forward. The day is taken as it stands: set the camera’s clock.`,
      );
      break;
    case 'twice':
      notes.push(
        `The camera’s clock said ${time} on ${on}, a time that came twice here as clocks were put back. Both are on that day, which is taken as it stands: nothing is to be done.`,
      );
      break;
    case 'once':
      notes.push(
        'The camera’s clock told no time zone. The day is taken as it stands: if the clock was on another country’s time, give the photo its day.',
      );
  }
  return notes;
}

/** Whether a note is on the camera's clock: it says nothing any more once the grower has given the day. */
export function isClockNote(note: string): boolean {
  return /^The camera’s clock (said|told) /.test(note);
}

/** Exif 2.31 and later: `OffsetTime` and its like, `+01:00`. */
function hasOffset(exifBlock: Uint8Array | null): boolean {
  const { Photo } = exifTags(exifBlock) ?? {};
  return [Photo?.OffsetTimeOriginal, Photo?.OffsetTimeDigitized, Photo?.OffsetTime].some(
    (offset) => typeof offset === 'string' && /^[+-]\d\d:\d\d/.test(offset),
  );
}
