import { addDays, type Day, day } from '../../../core/day/day.ts';
import { LOG_WORDS } from '../../../core/season/log-entry.ts';
import type { PlantBloom } from '../../../server/schemas/condition.ts';
import type { Note } from '../../../server/schemas/sitting.ts';
import { plusMinusWords } from '../measures/reading.ts';
import { dayWords, shortDayWords } from '../words/day-words.ts';

/** A bloom that the sittings tell. */
export type ToldBloom = Extract<PlantBloom, { state: 'told' }>;
export type BloomDate = ToldBloom['firstColour'];
export type BloomOffer = ToldBloom['offers'][number];
type Reading = ToldBloom['readings'][number];
type CurvePoint = ToldBloom['curve'][number];

/** The days of a bloom in their order, with what each is called. */
export const BLOOM_EVENTS = [
  { name: 'firstColour', words: 'First colour' },
  { name: 'half', words: 'Half open' },
  { name: 'full', words: 'Full bloom' },
  { name: 'fading', words: 'Fading' },
] as const;

/** One of these days with its number on the curve. */
export interface BloomEvent {
  readonly number: number;
  readonly words: string;
  readonly date: BloomDate;
  /** Lies ahead, and nobody could name its day yet: only its range is told. */
  readonly isOpen: boolean;
}

/** The days that are told, numbered as on the curve; fading is told only once full bloom is reached. */
export function bloomEvents(bloom: ToldBloom): BloomEvent[] {
  return BLOOM_EVENTS.flatMap(({ name, words }) => {
    const date = bloom[name];
    return date ? [{ words, date, isOpen: bloom.sureness === 'unsure' && !date.isPast }] : [];
  }).map((event, at) => ({ number: at + 1, ...event }));
}

/** "Full bloom: about Sun 8 Nov (2 Nov to 12 Nov)", "likely about …" where it lies ahead, a range alone where it is open. */
export function eventWords({ words, date, isOpen }: BloomEvent, today: Day): string {
  if (isOpen) return `${words}: between ${dayWords(date.from90, today)} and ${dayWords(date.to90, today)}`;
  const about = date.isPast ? 'about' : 'likely about';
  return `${words}: ${about} ${dayWords(date.day, today)}${rangeWords(date)}`;
}

function rangeWords({ from90, to90 }: Pick<BloomDate, 'from90' | 'to90'>): string {
  return from90 === to90 ? '' : ` (${shortDayWords(from90)} to ${shortDayWords(to90)})`;
}

/** "35 % ±2.4". */
export function readingWords({ share, plusMinus }: Reading): string {
  const spread = plusMinusWords(plusMinus === null ? null : 100 * plusMinus);
  return `${(100 * share).toFixed(0)} %${spread ? ` ${spread}` : ''}`;
}

/** "38 %, 30 to 45 % (9 in 10)". */
export function curveWords({ share, low90, high90 }: CurvePoint): string {
  const percent = (value: number) => (100 * value).toFixed(0);
  return `${percent(share)} %, ${percent(low90)} to ${percent(high90)} % (9 times in 10)`;
}

/** What the curve says, for those who hear it. */
export function heardCurve(bloom: ToldBloom, today: Day): string {
  const days = bloomEvents(bloom).map((event) => eventWords(event, today));
  return `Share of the canopy in flower over the sittings. ${days.join('. ')}. The table below says the same.`;
}

export const CURVE_CAPTION = 'In flower, % of the canopy as seen';

export const CURVE_MEANING =
  'Dots are your sittings with their plus-minus. The line is the middle of all curves that rise and fall as blooms do and agree with the sittings; in nine cases of ten the bloom lies in the band. Broken, it is foretold. First colour, half and full bloom are where 5, 50 and 80 % of the flower that will come are open; below 80 % again it is called fading. The bars give each day’s 90 % range, a broken ring a day that cannot be named yet. The dotted upright is today; pale dots belong to the bloom before.';

/** The first days in flower and in full bloom that the grower wrote down since this bloom began. */
export function notedWords(notes: readonly Note[], bloom: ToldBloom, today: Day): string | null {
  // Without a stop to count from, a note may stand a little before the colour that the photos show.
  const since = bloom.since?.day ?? addDays(day(bloom.firstColour.from90), -NOTED_BEFORE_DAYS);
  const noted = (['first-flower', 'full-bloom', 'bloom-over'] as const).flatMap((kind) => {
    const note = notes.filter((one) => one.kind === kind && one.day >= since).sort(byDay)[0];
    return note ? [`${LOG_WORDS[kind].toLowerCase()}, ${dayWords(note.day, today)}`] : [];
  });
  return noted.length === 0 ? null : `In your log: ${noted.join('; ')}.`;
}

const NOTED_BEFORE_DAYS = 14;

function byDay(one: Note, other: Note): number {
  return one.day < other.day ? -1 : 1;
}

/** What the yes puts into the record. */
export function offerQuestion(offers: readonly BloomOffer[]): string {
  return offers.length === 1 ? 'Put this day into the record?' : 'Put these days into the record?';
}

/** "First flower open: about Sun 25 Oct (23 Oct to 27 Oct)". */
export function offerLine({ logKind, day: on, from90, to90, movesNoteId }: BloomOffer, today: Day): string {
  const moves = movesNoteId === null ? '' : ', moved from an earlier day';
  return `${LOG_WORDS[logKind]}: about ${dayWords(on, today)}${rangeWords({ from90, to90 })}${moves}`;
}

export const OFFER_MEANING =
  'They become lines of the log, and the weeks from a stop to bloom are learned from them for the next plan.';

export const OFFER_WORDS = {
  yes: 'Yes, put them in',
  yesOne: 'Yes, put it in',
  no: 'No',
  written: 'Written down: the days of the bloom.',
  refused: 'Not put into the record.',
} as const;

export const TAKEN_OFF = {
  button: 'Heads taken off today',
  written: 'Written down: bloom taken off, today.',
} as const;
