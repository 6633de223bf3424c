/** How far a figure is to be trusted, most to least; `grower`: the grower's own, which goes before all. */
export const STANDINGS = ['published', 'common-practice', 'own-choice', 'grower'] as const;
export type Standing = (typeof STANDINGS)[number];

/** A number that may be changed, with what it rests on. */
export interface Figure {
  readonly value: number;
  readonly standing: Standing;
  /** Where it comes from, as a sentence. */
  readonly words: string;
}

/** A figure with a printed source. */
export function published(value: number, words: string): Figure {
  return { value, standing: 'published', words };
}

/** What growers do, printed nowhere that could be named. */
export function commonPractice(value: number, words: string): Figure {
  return { value, standing: 'common-practice', words: `${words}: common practice, no source.` };
}

/** Chosen by us where no source gives a figure. */
export function ownChoice(value: number, words: string): Figure {
  return { value, standing: 'own-choice', words: `${words}: no source, our own choice.` };
}
