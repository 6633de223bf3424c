import { said } from '../languages/speaker.ts';

/** A number, its plus-minus and its unit, where they stand apart. */
export interface Figure {
  readonly value: string;
  readonly plusMinus: string | null;
  readonly unit: string;
}

/** The same in the reader's units and decimals; as one text they would be by themselves, apart nothing tells what they measure. */
export function spokenFigure<Known extends Figure>(figure: Known): Known {
  const { value, plusMinus, unit } = figure;
  const [spoken, spokenUnit] = apart(said(`${value} ${unit}`));
  const range = plusMinus === null ? null : `±${apart(said(`${plusMinus.replace(/^±\s?/, '')} ${unit}`))[0]}`;
  return { ...figure, value: spoken, plusMinus: range, unit: spokenUnit };
}

/** A text of a number and words, at its first space. */
function apart(text: string): [number: string, words: string] {
  const at = text.indexOf(' ');
  return at === -1 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
}
