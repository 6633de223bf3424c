/** A number with a decimal point, no part of a version or a date. */
const DECIMAL = /(?<![\d.])(\d+)\.(\d+)(?!\d|\.\d)/g;

/** A text whose decimals are written as in a locale: "0.5 mm" is "0,5 mm" in German. */
export function withDecimalsOf(text: string, locale: string): string {
  const mark =
    new Intl.NumberFormat(locale).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  return mark === '.' ? text : text.replaceAll(DECIMAL, `$1${mark}$2`);
}
