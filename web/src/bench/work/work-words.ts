import type { Day } from '../../../../core/day/day.ts';
import type { IconName } from '../../parts/Icon.tsx';
import { dayWords } from '../../words/day-words.ts';
import { countWords } from '../../words/plant-words.ts';
import type { NamedPiece, WorkGroup } from './work-groups.ts';

export const WORK_ICONS: Record<NamedPiece['kind'], IconName> = {
  stop: 'shorten',
  'keep-dry': 'dry',
  'water-little': 'water',
  'keep-airy': 'air',
  'look-for-breaks': 'look',
  'look-over': 'leaf',
  'look-again': 'look',
  'take-off-bloom': 'bloom',
  turn: 'turn',
  photograph: 'photograph',
  'check-entry': 'sheet',
  feed: 'feed',
  'pot-on': 'pot',
  own: 'edit',
};

/** "since Fri 20 Nov", "until Sun 29 Nov", "today only": how long the work waits, without hurry. */
export function waitWords({ day, dueBy, until, state }: NamedPiece, today: Day): string {
  if (state === 'to-come') return dayWords(day, today);
  if (state === 'overdue') return `since ${dayWords(day, today)}`;
  if (dueBy > today) return `until ${dayWords(dueBy, today)}`;
  return until === today ? 'today only' : 'today';
}

/** "Fri 27 Nov", or "Fri 27 Nov to Tue 1 Dec" for a group over several days. */
export function groupDays({ pieces }: WorkGroup, today: Day): string {
  const [first, last] = [pieces[0]?.day ?? today, pieces.at(-1)?.day ?? today];
  return first === last ? dayWords(first, today) : `${dayWords(first, today)} to ${dayWords(last, today)}`;
}

const NAMED = 3;
/** Up to here, naming the rest is shorter than opening the list to look. */
const ALL_NAMED = 6;

/** "Amber Lane, Birch Ferry, Cinder Lantern and 9 more". */
export function namesInWords(pieces: readonly NamedPiece[]): string {
  const names = [...new Set(pieces.map(({ plantName }) => plantName))];
  if (names.length <= ALL_NAMED) return names.join(', ');
  return `${names.slice(0, NAMED).join(', ')} and ${names.length - NAMED} more`;
}

/** "Done: Turn the pot. 12 plants." */
export function saidInWords(done: string, pieces: readonly NamedPiece[]): string {
  const [first] = pieces;
  const on =
    pieces.length === 1
      ? (first?.plantName ?? '')
      : countWords(new Set(pieces.map((one) => one.plantId)).size, 'plant');
  return `${done}: ${on}. ${first?.what ?? ''}`;
}

/** The depth that the plan wants, to begin the entry with; the grower may have done the other. */
export function stopDepth({ what }: NamedPiece): 'tip' | 'deep' {
  return what.includes('(deep)') ? 'deep' : 'tip';
}
