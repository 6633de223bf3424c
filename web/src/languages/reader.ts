import { createKeptStore } from '../parts/store.ts';
import { deviceTags } from './device-tags.ts';
import type { Entries, Interpreter } from './interpreter.ts';
import { speak } from './speaker.ts';

/** Languages that the app speaks, each under its own name. Those after the first are translations that no native grower has read yet. */
export const LANGUAGES = { en: 'English', de: 'Deutsch', nl: 'Nederlands' } as const;
export type Language = keyof typeof LANGUAGES;

export const UNITS = ['metric', 'inches'] as const;
export type Units = (typeof UNITS)[number];

/** The reader's choices, kept on this device. */
export const languageChoice = createKeptStore<Language | 'device'>(
  'rondure.language',
  'device',
  isLanguageChoice,
);
export const unitsChoice = createKeptStore<Units>('rondure.units', 'metric', (kept): kept is Units =>
  UNITS.includes(kept as Units),
);

function isLanguageChoice(kept: unknown): kept is Language | 'device' {
  return kept === 'device' || isLanguage(kept);
}

function isLanguage(name: unknown): name is Language {
  return typeof name === 'string' && Object.hasOwn(LANGUAGES, name);
}

/** The language to speak: the one chosen, else the first of the device's that the app knows, else English. */
export function readersLanguage(): Language {
  const choice = languageChoice.read();
  if (choice !== 'device') return choice;
  const known = deviceTags(navigator.languages)
    .map((tag) => tag.slice(0, 2))
    .find(isLanguage);
  return known ?? 'en';
}

/** The manner of dates and numbers: the device's own where it agrees with the language, so that an Austrian reads Austrian days. */
export function readersLocale(): string {
  const language = readersLanguage();
  return (
    deviceTags(navigator.languages).find((tag) => tag.startsWith(language)) ??
    (language === 'en' ? 'en-GB' : language)
  );
}

const ENTRIES: Readonly<Record<Exclude<Language, 'en'>, () => Promise<{ default: Entries }>>> = {
  de: () => import('../../languages/de.json'),
  nl: () => import('../../languages/nl.json'),
};

/**
 * Has every text given in the reader's language and units from now on. Before the first screen: a later choice takes effect when the page is
 * opened anew.
 *
 * @returns once the words are there; English in metric waits for nothing
 * @throws when the words cannot be fetched; texts then stay English
 */
export async function speakReadersLanguage(): Promise<void> {
  const language = readersLanguage();
  document.documentElement.lang = language;
  const toUnits = unitsChoice.read() === 'inches' ? (await import('./lengths.ts')).inInches : asItIs;
  const locale = readersLocale();
  if (language === 'en') return speak(toUnits === asItIs ? null : toUnits, locale);
  speak(toUnits, locale);
  const [{ default: entries }, { interpreterOf }, { dayInLocale }, { withDecimalsOf }] = await Promise.all([
    ENTRIES[language](),
    import('./interpreter.ts'),
    import('./written-days.ts'),
    import('./decimals.ts'),
  ]);
  const interpret = interpreterOf(entries, (text) => dayInLocale(text, locale));
  speak((text) => withDecimalsOf(toUnits(interpret(text)), locale), locale);
}

const asItIs: Interpreter = (text) => text;
