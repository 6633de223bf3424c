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

/**
 * The day and local time in a photo's EXIF block, `null` when it has none that can be right.
 *
 * exif-reader dresses the camera's local time as UTC, so it is read back in UTC and never converted. It also
 * rolls a nonsense date over (month 13 becomes January): a date is believed only if the block spells it so.
 */
export function takenAt(exifBlock: Uint8Array | null | undefined): TakenAt | null {
  const tags = exifTags(exifBlock);
  if (tags === null || !exifBlock) return null;
  const block = Buffer.from(exifBlock.buffer, exifBlock.byteOffset, exifBlock.byteLength);
  for (const date of [tags.Photo?.DateTimeOriginal, tags.Photo?.DateTimeDigitized, tags.Image?.DateTime]) {
    if (!(date instanceof Date) || Number.isNaN(date.getTime())) continue;
    const localTime = date.toISOString().slice(0, 19);
    const dayText = localTime.slice(0, 10);
    const spelt = `${dayText.replaceAll('-', ':')} ${localTime.slice(11)}`;
    if (isDay(dayText) && date.getUTCFullYear() >= FIRST_YEAR && block.includes(spelt, 0, 'latin1')) {
      return { day: dayText, localTime };
    }
  }
  return null;
}
