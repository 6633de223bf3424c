import { type Day, isDay } from '../../core/day/day.ts';
import { exifTags } from './exif-tags.ts';

/** When the camera says a photo was taken: its own local time, without a zone. */
export interface TakenAt {
  readonly day: Day;
  /** `YYYY-MM-DDTHH:MM:SS`, no zone. */
  readonly localTime: string;
}

/** No digital camera wrote EXIF before; an earlier year is a clock that was never set. */
const FIRST_YEAR = 1995;

/** The day and local time in a photo's EXIF block, `null` when it has none that can be right. */
export function takenAt(exifBlock: Uint8Array | null | undefined): TakenAt | null {
  return timesIn(exifBlock).find(({ day }) => Number(day.slice(0, 4)) >= FIRST_YEAR) ?? null;
}

/** The first time that an EXIF block spells, also one that cannot be right because the clock was never set. */
export function writtenTime(exifBlock: Uint8Array | null | undefined): TakenAt | null {
  return timesIn(exifBlock)[0] ?? null;
}

/**
 * exif-reader dresses the camera's local time as UTC, so it is read back in UTC and never converted. It also
 * rolls a nonsense date over (month 13 becomes January): a date is believed only if the block spells it so.
 */
function timesIn(exifBlock: Uint8Array | null | undefined): TakenAt[] {
  const tags = exifTags(exifBlock);
  if (tags === null || !exifBlock) return [];
  const block = Buffer.from(exifBlock.buffer, exifBlock.byteOffset, exifBlock.byteLength);
  return [tags.Photo?.DateTimeOriginal, tags.Photo?.DateTimeDigitized, tags.Image?.DateTime].flatMap(
    (date) => {
      if (!(date instanceof Date) || Number.isNaN(date.getTime())) return [];
      const localTime = date.toISOString().slice(0, 19);
      const day = localTime.slice(0, 10);
      const spelt = `${day.replaceAll('-', ':')} ${localTime.slice(11)}`;
      return isDay(day) && block.includes(spelt, 0, 'latin1') ? [{ day, localTime }] : [];
    },
  );
}
