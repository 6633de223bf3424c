import { OWN_WORDS } from './own-words.ts';
import { filled, hasPlaces, patternOf } from './pattern.ts';

/** English texts of the app, places for values numbered, each with its words in another language: "Sent {0} of {1}": "{0} von {1} gesendet". */
export type Entries = Readonly<Record<string, string>>;

/** Gives English text in the words of another language; what it does not know comes back as it was. */
export type Interpreter = (english: string) => string;

/** The space after a sentence; not the one within a German day, "22. Nov. 2026". */
const SENTENCE =
  /(?<=[.!?…])\s+(?!(?:Jan|Feb|März|Apr|Mai|Jun|Jul|Aug|Sep|Okt|Nov|Dez|\d{4}\b))(?=[^\s\p{Ll}])/u;
/** The space after a clause. */
const CLAUSE = /(?<=[:;])\s+(?=\S)/;
/** What stands between the parts of a list. */
const BETWEEN = /(, and |, or | and | or |, | · | – )/;
/** A text with fewer letters of its own says too little to hold several sentences as its values. */
const LEAST_LETTERS_OF_MANY = 24;
/** With fewer, "{0} on {1}", its values must be known, or it would be found in what was never meant by it. */
const LEAST_LETTERS_FOR_ANY_VALUE = 12;
/** How a name or a number begins, with elements before it or none. */
const NAME_START = /^[\s\ue000-\uf8ff]*[\p{Lu}\d“"]/u;
/** What a name rarely has and a stretch of a sentence nearly always: its value would be left in English in the midst of a translation. */
const SENTENCE_PIECE =
  /[,;:.] |\b(?:the|its|it|is|are|was|were|be|would|to|by|than|that|since|before|after|not|and|between|times|in|on|at|for|from|with)\b/;
/** A day as the reader writes it, "Mo., 30. Nov." or "za 12 jun 2027": its dots and commas part no sentence. */
const READERS_DAY = /^[\s\ue000-\uf8ff]*(?:\p{L}+\.?,? )?\d{1,2}\.? \p{L}+\.?(?: \d{4})?$/u;

const SPACES = /^(\s*)(.*?)(\s*)$/s;
const ELEMENTS = /^([\s\ue000-\uf8ff]*)(.*?)([\s\ue000-\uf8ff]*)$/s;
const LEAD = /^((?:[:;,▲] )?)(.*)()$/s;
const SIGN = /^()(.*?)([.:;,]?)$/s;

/**
 * An interpreter that knows the given texts.
 *
 * @param value gives what no entry knows, a day for one
 *
 * How: a text is looked up whole; else as a text with values in it, the one that shares most words, each value interpreted by itself; else sentence by
 * sentence; else part by part of a list, if all parts are known: half a translation is worse than none. Every answer is remembered, as a screen says the same
 * things again and again.
 *
 * Notes: an element inside a text is a value like any other (`spoken-children.ts`), so a translation may move it.
 */
export function interpreterOf(entries: Entries, value: Interpreter = (text) => text): Interpreter {
  const whole = new Map([...sentencesOf(entries), ...Object.entries(entries)]);
  const patterns = [...whole]
    .filter(([english]) => hasPlaces(english))
    .map(([english, translation]) => patternOf(english, translation))
    .sort((one, other) => other.letters - one.letters);
  const remembered = new Map<string, string | null>();

  /** `null` where the words are not known. */
  const understood = (text: string): string | null => {
    const known = remembered.get(text);
    if (known !== undefined) return known;
    const answer =
      within(SPACES, text) ??
      wholeOrPattern(text) ??
      within(ELEMENTS, text) ??
      within(LEAD, text) ??
      inSentences(text) ??
      within(SIGN, text) ??
      inParts(text);
    remembered.set(text, answer);
    return answer;
  };

  /** An icon before known words makes no other text of them: "⌂ Potted on" is not "{0} on". */
  const wholeOrPattern = (text: string): string | null => {
    const [, before, plain, after] = ELEMENTS.exec(text) as unknown as [string, string, string, string];
    const asItIs = matched(text);
    const plainly = plain === text ? null : matched(plain);
    if (plainly === null || (asItIs !== null && asItIs.letters >= plainly.letters))
      return asItIs?.said ?? null;
    return before + plainly.said + after;
  };

  /** The words for a text, and how many letters it shares with what is known. */
  const matched = (text: string): { said: string; letters: number } | null => {
    const exact = whole.get(text);
    if (exact !== undefined) return { said: exact, letters: text.length };
    const isMany = SENTENCE.test(text);
    // A dot parts more than any words do: what stands on both sides of it is no value of one text.
    const isDotted = text.includes(' · ');
    for (const { form, places, translation, anchor, letters } of patterns) {
      if (!text.includes(anchor) || (isMany && letters < LEAST_LETTERS_OF_MANY)) continue;
      if (isDotted && !form.source.includes('·')) continue;
      const match = form.exec(text);
      if (match === null || match.slice(1).some(isCutOff)) continue;
      const values = new Map<number, string>();
      for (const [k, place] of places.entries()) {
        const words = match[k + 1] ?? '';
        // A list before few words has only its last part in common with them: "So., 15. Nov., 11 days ago".
        const isList = words.includes(', ') && !READERS_DAY.test(words);
        if (isList && text.startsWith(words) && letters < LEAST_LETTERS_FOR_ANY_VALUE) continue;
        const said =
          understood(words) ?? (isOwn(words) || letters >= LEAST_LETTERS_FOR_ANY_VALUE ? words : null);
        if (said !== null) values.set(place, said);
      }
      if (values.size === new Set(places).size) return { said: filled(translation, values), letters };
    }
    return null;
  };

  /** What stands between two ends, those kept as they are; `null` without such ends. */
  const within = (ends: RegExp, text: string): string | null => {
    const [, before, plain, after] = ends.exec(text) as unknown as [string, string, string, string];
    if (plain === '' || plain === text) return null;
    const said = understood(plain);
    return said === null ? null : before + said + after;
  };

  const inSentences = (text: string): string | null => {
    const sentences = text.split(SENTENCE);
    if (sentences.length < 2) return null;
    const said = sentences.map(understood);
    return said.every((one) => one === null) ? null : said.map((one, k) => one ?? sentences[k]).join(' ');
  };

  const inParts = (text: string): string | null => {
    for (const between of [CLAUSE, BETWEEN]) {
      const parts = text.split(between);
      if (parts.length < 2) continue;
      const isListed = between === BETWEEN;
      const said = parts.map((part, k) =>
        isListed && k % 2 === 1 ? joint(part) : (understood(part) ?? (isOwn(part) ? part : null)),
      );
      if (said.every((one) => one !== null)) return said.join(isListed ? '' : ' ');
    }
    const given = value(text);
    return given === text ? null : given;
  };

  const joint = (between: string): string => {
    const word = between.replaceAll(/[^a-z]/g, '');
    return word === '' ? between : between.replace(word, whole.get(word) ?? word);
  };

  return (text) => {
    const [masked, own] = withoutOwnWords(text);
    const said = understood(masked);
    if (said === null) return text;
    // A day may end in a dot of its own, "22. Nov.": the sentence that ends in it has only one.
    return own.reduce(
      (all, words, k) => all.replace(ownSign(k), () => words),
      said.replaceAll(/(?<=\p{L})\.\.(?!\.)/gu, '.'),
    );
  };
}

/** A text with the grower's own words taken out (`own-words.ts`), and those words. */
function withoutOwnWords(text: string): [masked: string, own: readonly string[]] {
  const own: string[] = [];
  const masked = text.replaceAll(OWN_WORDS, (words) => {
    own.push(words);
    return ownSign(own.length - 1);
  });
  return [masked, own];
}

/** Stands for the grower's words: beyond those that stand for elements. */
function ownSign(at: number): string {
  return String.fromCharCode(0xf000 + at);
}

/** The sentences of the entries that hold several, one by one: what the app says may break off after any of them. */
function* sentencesOf(entries: Entries): Generator<[string, string]> {
  for (const [english, translation] of Object.entries(entries)) {
    const [sentences, translated] = [english.split(SENTENCE), translation.split(SENTENCE)];
    if (sentences.length < 2 || sentences.length !== translated.length) continue;
    for (const [k, sentence] of sentences.entries()) {
      if (/\p{L}{2}/u.test(sentence.replaceAll(/\{\d+\}/g, ''))) yield [sentence, translated[k] as string];
    }
  }
}

/** Whether a value holds several sentences and ends within one: the text then goes on where the pattern ends. */
function isCutOff(text: string | undefined): boolean {
  return text !== undefined && SENTENCE.test(text) && !/[.!?…]$/.test(text);
}

/** Whether a value is a name, a number or an element: needs no translation. */
function isOwn(text: string): boolean {
  if (READERS_DAY.test(text)) return true;
  return /^\P{L}*$/u.test(text) || (NAME_START.test(text) && !SENTENCE_PIECE.test(text));
}
