/** A larger picture is refused before its pixels are unpacked. */
export const MOST_PIXELS = 64_000_000;
