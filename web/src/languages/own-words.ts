/** What the grower wrote, within a text of the app: between the signs that Unicode has for a stretch in another language (FIRST STRONG ISOLATE, POP DIRECTIONAL ISOLATE). */
export const OWN_WORDS = /\u2068[^\u2069]*\u2069/g;

/** Marks the grower's words in a text of the app, so that no language is put on them. The signs are not seen. */
export function ownWords(written: string): string {
  return `\u2068${written}\u2069`;
}
