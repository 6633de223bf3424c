/**
 * The device's languages as tags of BCP 47 (RFC 5646), in its order. Browsers hand on what a Unix system is set
 * to, as in `en-US@posix` or `C`: a modifier or an encoding is cut off, and what is still no tag is left out,
 * since writing a date by it would throw.
 */
export function deviceTags(said: readonly string[]): string[] {
  return said.flatMap((one) => canonical(one.replace(/[.@].*$/, '').replaceAll('_', '-')));
}

function canonical(tag: string): string[] {
  try {
    return Intl.getCanonicalLocales(tag);
  } catch {
    return [];
  }
}
