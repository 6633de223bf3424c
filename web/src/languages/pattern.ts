/** A text with places for values, as it is found in what the app says. */
export interface Pattern {
  readonly form: RegExp;
  /** Number of the place that each group of `form` stands for. */
  readonly places: readonly number[];
  readonly translation: string;
  /** Its longest stretch without a value: a text that lacks it cannot match. */
  readonly anchor: string;
  /** How many letters it has of its own. */
  readonly letters: number;
}

/** Whether a text has places for values. */
export function hasPlaces(text: string): boolean {
  return PLACE.test(text);
}

/** A translation with its places filled in. */
export function filled(translation: string, values: ReadonlyMap<number, string>): string {
  return tidied(translation.replaceAll(EVERY_PLACE, (_, place) => values.get(Number(place)) ?? ''));
}

const PLACE = /\{\d+\}/;
const EVERY_PLACE = /\{(\d+)\}/g;

/** How a text with places is told from others, and what its words are. */
export function patternOf(source: string, target: string): Pattern {
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
