import type { Day } from '../../../core/day/day.ts';
import type { PlantFill, PlantLeaf } from '../../../server/schemas/condition.ts';
import { dayWords } from '../words/day-words.ts';

type ShareNow = PlantFill['cleanUps'][number]['before'] & object;
type CleanUp = PlantFill['cleanUps'][number];

/** "4 % ±3": never ±0. */
export function shareWords({ share, plusMinus }: ShareNow): string {
  return `${(100 * share).toFixed(0)} % ±${Math.max(1, Math.round(100 * plusMinus))}`;
}

/** What the folded line on leaf says. */
export function leafLine({ newest, changes }: PlantLeaf): string {
  if (newest === null) return 'not told';
  const yellow = `${shareWords(newest.yellow)} yellow`;
  const told = changes.filter(({ direction }) => direction !== 'none');
  if (changes.length === 0) return yellow;
  if (told.length === 0) return `${yellow}, no change`;
  return `${yellow}, ${told.map(({ tone, direction }) => `${direction === 'up' ? 'more' : 'less'} ${tone}`).join(', ')}`;
}

/** What counts as healthy leaf for this plant. */
export const NORMAL_MEANING =
  'A golden, zoned or dark-leaved plant is normal for itself: its leaf is held against its own healthy sittings, not against other plants.';

export const LEARN_ANEW = {
  name: 'What is normal for this plant',
  button: (day: string, today: Day) => `Its leaf is healthy on ${dayWords(day, today)}: learn from that day`,
  told: (day: string, today: Day) => `Healthy leaf is learned from ${dayWords(day, today)}.`,
  takenBack: (day: string, today: Day) => `${dayWords(day, today)} no longer counts as healthy.`,
  forget: (day: string, today: Day) => `Do not learn from ${dayWords(day, today)}`,
  caution:
    'Say it only of a plant whose leaf you would be glad to see again. Every photo is judged anew by it.',
} as const;

export const SHOW_ON_PHOTO = {
  yellow: 'Show it on the photo',
  thin: 'Show the thin places on the photo',
} as const;

/** What the folded line on gaps says. */
export function fillLine({ newest }: PlantFill): string {
  if (newest === null) return 'not told';
  const thin =
    newest.thinClocks.length === 0 ? 'no thin place' : `thin at ${newest.thinClocks.join(', ')} o’clock`;
  return `${thin}, ${shareWords(newest.openBase)} of the base open`;
}

export const FILL_SIDE =
  'As seen from the side of the photo; hours are those of the photo’s clock, 12 on top.';

export const TIGHTNESS_LATER =
  'How tight it is beside your other plants is told from three others of the kind on, about as long after their last stop.';

/** Before which clean-up the light at the base was what. */
export function cleanUpDays({ day, beforeDay, afterDay }: CleanUp, today: Day): string {
  const photos = [beforeDay, afterDay].flatMap((one) => (one === null ? [] : [dayWords(one, today)]));
  const between = photos.length === 2 ? ` (photos of ${photos[0]} and ${photos[1]})` : '';
  return `Cleared on ${dayWords(day, today)}${between}`;
}

/** Asking about a plant that looks limp. */
export const WILT = {
  name: 'Looks limp',
  dryName: 'Limp, and dry on purpose',
  measured:
    'It is measured all the same. With your yes its photos are kept out of trend and advice; nothing is removed.',
  yes: 'Yes, keep it out of the trend',
  no: 'No, it counts',
  denied: 'Kept in the trend. You are not asked again about this sitting.',
} as const;
