import { MM_PER_FOOT, MM_PER_INCH } from './inch.ts';

/** Lengths and areas as texts say them: "24 mm", "12–14 mm", "± 2 mm", "24 mm (± 2)", "1.5 m", "40 cm²". */
const LENGTH =
  /(\d+(?:[.,]\d+)?)((?:\s?(?:–|-|±|×|to|bis|tot|and|und|en)\s?\d+(?:[.,]\d+)?)*)(\s?)(mm|cm|m)(²?)(?![\p{L}\d²³])(\s\(±\s?\d+(?:[.,]\d+)?\))?/gu;
const NUMBER = /\d+(?:[.,]\d+)?/g;

/**
 * A text with its lengths in inches, those in metres in feet.
 *
 * Example: "24 mm (± 2)" is "0.94 in (± 0.08)"; "1.5 m" is "4.9 ft".
 */
export function inInches(text: string): string {
  return text.replaceAll(
    LENGTH,
    (_, first: string, more: string, space: string, unit: 'mm' | 'cm' | 'm', square, plusMinus) => {
      const mmPerUnit = { mm: 1, cm: 10, m: 1000 }[unit];
      const name = unit === 'm' ? 'ft' : 'in';
      const mmPerName = name === 'ft' ? MM_PER_FOOT : MM_PER_INCH;
      const factor = (mmPerUnit / mmPerName) ** (square === '²' ? 2 : 1);
      const converted = (piece: string) =>
        piece.replaceAll(NUMBER, (value) => rounded(Number(value.replace(',', '.')) * factor));
      return `${converted(first + more)}${space === '' ? ' ' : space}${name}${square}${converted(plusMinus ?? '')}`;
    },
  );
}

/** To a hundredth below 1, to a tenth from there on. */
function rounded(value: number): string {
  return String(value < 1 ? Math.round(value * 100) / 100 : Math.round(value * 10) / 10);
}
