/** English texts of the app, places for values numbered, each with its words in another language: "Sent {0} of {1}": "{0} von {1} gesendet". */
export type Entries = Readonly<Record<string, string>>;

/** Gives English text in the words of another language; what it does not know comes back as it was. */
export type Interpreter = (english: string) => string;

interface Pattern {
  readonly form: RegExp;
  /** Number of the place that each group of `form` stands for. */
  readonly places: readonly number[];
  readonly translation: string;
  /** Its longest stretch without a value: a text that lacks it cannot match. */
  readonly anchor: string;
  /** How many letters it has of its own. */
  readonly letters: number;
}

/** The space after a sentence; not the one within a German day, "22. Nov. 2026". */
const SENTENCE = /(?<=[.!?…])\s+(?!(?:Jan|Feb|März|Apr|Mai|Jun|Jul|Aug|Sep|Okt|Nov|Dez|\d{4}\b))(?=\S)/;
/** The space after a clause. */
const CLAUSE = /(?<=[:;])\s+(?=\S)/;
/** A text with fewer letters of its own says too little to hold several sentences as its values. */
const LEAST_LETTERS_OF_MANY = 24;
/** What stands between the parts of a list. */
const BETWEEN = /(, and |, or | and | or |, | · | – )/;

/**
 * An interpreter that knows the given texts.
 *
 * @param value gives what no entry knows, a day for one
 *
 * How: a text is looked up whole; else as a text with values in it, the one that shares most words, each value interpreted by itself; else sentence by
 * sentence; else part by part of a list. Every answer is remembered: a screen says the same things again and again.
 *
 * Notes: an element inside a text is a value like any other (`spoken-children.ts`), so a translation may move it.
 */
export function interpreterOf(entries: Entries, value: Interpreter = (text) => text): Interpreter {
  const whole = new Map(Object.entries(entries));
  const patterns = Object.entries(entries)
    .filter(([english]) => PLACE.test(english))
    .map(([english, translation]) => patternOf(english, translation))
    .sort((one, other) => other.letters - one.letters);
  const remembered = new Map<string, string>();

  const interpret: Interpreter = (text) => {
    const known = remembered.get(text);
    if (known !== undefined) return known;
    const [, before, plain, after] = /^(\s*)(.*?)(\s*)$/s.exec(text) as unknown as [
      string,
      string,
      string,
      string,
    ];
    const said = before + (wholeOrPattern(plain) ?? inParts(plain)) + after;
    remembered.set(text, said);
    return said;
  };

  const wholeOrPattern = (text: string): string | null => {
    const exact = whole.get(text);
    if (exact !== undefined) return exact;
    const isMany = SENTENCE.test(text);
    for (const { form, places, translation, anchor, letters } of patterns) {
      if (!text.includes(anchor) || (isMany && letters < LEAST_LETTERS_OF_MANY)) continue;
      const match = form.exec(text);
      if (match === null) continue;
      const values = new Map(places.map((place, k) => [place, interpret(match[k + 1] ?? '')]));
      return tidied(translation.replaceAll(EVERY_PLACE, (_, place) => values.get(Number(place)) ?? ''));
    }
    return null;
  };

  const inParts = (text: string): string => {
    const sentences = text.split(SENTENCE);
    if (sentences.length > 1) return sentences.map(interpret).join(' ');
    const clauses = text.split(CLAUSE);
    if (clauses.length > 1) return clauses.map(interpret).join(' ');
    const ended = /^(.+)([.:;,])$/s.exec(text);
    if (ended !== null) return interpret(ended[1] as string) + ended[2];
    const parts = text.split(BETWEEN);
    if (parts.length > 1)
      return parts.map((part, k) => (k % 2 === 0 ? interpret(part) : joint(part))).join('');
    return value(text);
  };

  const joint = (between: string): string => {
    const word = between.replaceAll(/[^a-z]/g, '');
    return word === '' ? between : between.replace(word, whole.get(word) ?? word);
  };

  return interpret;
}

const PLACE = /\{\d+\}/;
const EVERY_PLACE = /\{(\d+)\}/g;

function patternOf(source: string, target: string): Pattern {
  const [english, translation] = joinedPlaces(source, target);
  const places: number[] = [];
  // A space beside a value may be missing: the value may be nothing.
  const form = english.split(/(\s*\{\d+\}\s*)/).map((piece) => {
    const place = /^(\s*)\{(\d+)\}(\s*)$/.exec(piece);
    if (place === null) return piece.replaceAll(/[.*+?^${}()|[\]\\/]/g, '\\$&');
    places.push(Number(place[2]));
    const [before, after] = [place[1] !== '', place[3] !== ''];
    // A value of nothing takes one of its spaces along; a word beside it still begins and ends as a word.
    if (before && after) return '(?!\\p{L})(?:\\s+(.*?))?(?:\\s+|$)';
    if (before) return '(?!\\p{L})(?:\\s+(.*?))?';
    return after ? '(?:(.*?)(?:\\s+|$))?(?<!\\p{L})' : '(.*?)';
  });
  const pieces = english
    .split(EVERY_PLACE)
    .filter((_, k) => k % 2 === 0)
    .map((piece) => piece.trim());
  const anchor = pieces.reduce((longest, piece) => (piece.length > longest.length ? piece : longest), '');
  return {
    form: new RegExp(`^${form.join('')}$`, 'su'),
    places,
    translation,
    anchor,
    letters: pieces.join('').length,
  };
}

/** Without the spaces that a value of nothing leaves behind. */
function tidied(text: string): string {
  return text
    .replaceAll(/ {2,}/g, ' ')
    .replaceAll(/ (?=[.,;:!?])/g, '')
    .trim();
}

/** A text and its translation with places that stand side by side in both made one: nothing tells where the one value ends and the next begins. */
function joinedPlaces(source: string, target: string): [string, string] {
  let [english, translation] = [source, target];
  for (const run of source.match(/\{\d+\}(?:\s*\{\d+\})+/g) ?? []) {
    const numbers = run.match(/\d+/g) as string[];
    const same = new RegExp(numbers.map((number) => `\\{${number}\\}`).join('\\s*'));
    if (!same.test(target)) continue;
    english = english.replace(run, `{${numbers[0]}}`);
    translation = translation.replace(same, `{${numbers[0]}}`);
  }
  return [english, translation];
}
