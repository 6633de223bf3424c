import { LOG_WORDS, type LogKind } from '../../../core/season/log-entry.ts';
import { sideWords } from '../../../core/turned/place-words.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Note, Stop } from '../../../server/schemas/sitting.ts';
import type { IconName } from '../parts/Icon.tsx';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';
import { capital } from '../words/turn-words.ts';

/** One line of a plant's log: what was done or seen on a day. */
export type LogLine =
  | { readonly kind: 'stops'; readonly entry: Stop }
  | { readonly kind: 'notes'; readonly entry: Note }
  | { readonly kind: 'turns'; readonly entry: Turn };

/** Stops, notes and turns as one log, the newest first; of one day the last written first. */
export function logLines({ stops, notes, turns }: Pick<PlantPage, 'stops' | 'notes' | 'turns'>): LogLine[] {
  return [
    ...stops.map((entry): LogLine => ({ kind: 'stops', entry })),
    ...notes.map((entry): LogLine => ({ kind: 'notes', entry })),
    ...turns.map((entry): LogLine => ({ kind: 'turns', entry })),
  ].sort((one, other) => (one.entry.day === other.entry.day ? 0 : one.entry.day < other.entry.day ? 1 : -1));
}

/** What a line says: its name, and the grower's words or what it means. */
export function lineInWords(line: LogLine): { name: string | null; words: string } {
  switch (line.kind) {
    case 'stops':
      return {
        name: STOP_WORDS[line.entry.depth],
        words: line.entry.note || STOP_MEANINGS[line.entry.depth],
      };
    case 'turns':
      return {
        name: 'Turned',
        words: `${capital(sideWords(line.entry.facesLightDeg))} to the light. ${line.entry.note}`.trim(),
      };
    case 'notes': {
      const { kind, text } = line.entry;
      return { name: kind === 'note' ? null : LOG_WORDS[kind], words: text };
    }
  }
}

export const LOG_ICONS: Record<LogKind, IconName> = {
  watered: 'water',
  fed: 'feed',
  'potted-on': 'pot',
  turned: 'turn',
  'cleared-leaf': 'leaf',
  'looked-under-leaves': 'look',
  'took-missed-tips': 'shorten',
  'seen-whitefly': 'look',
  'seen-grey-mould': 'look',
  'seen-wilt': 'dry',
  'seen-breaks': 'leaf',
  'first-flower': 'bloom',
  'full-bloom': 'bloom',
  'bloom-taken-off': 'bloom',
  'bloom-over': 'bloom',
  'show-result': 'show',
  note: 'edit',
};

export function iconOf(line: LogLine): IconName {
  if (line.kind === 'stops') return 'shorten';
  return line.kind === 'turns' ? 'turn' : LOG_ICONS[line.entry.kind];
}
