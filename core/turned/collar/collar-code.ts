/**
 * The turn collar's code: 63 steps round the pot, each a yes or a no.
 *
 * It is the sequence of period 2⁶ − 1 that the recurrence x(n+6) = x(n+5) + x(n+4) + x(n+1) + x(n) (mod 2) makes, begun with no and yes in turn. Any 6
 * neighbouring steps occur once round the pot, and any 11 differ from every other 11 in at least three places, any 13 in four, any 19 in seven, so a
 * step read wrong is noticed. Of the six such sequences this one keeps short stretches furthest apart; it begins where many steps in turn
 * make many edges, because the strip's ends, which never meet quite, stand there.
 *
 * Reference: Golomb (1967), Shift Register Sequences; MacWilliams and Sloane (1976), Pseudo-random sequences and arrays, Proc. IEEE 64:1715.
 */
export const COLLAR_CODE: readonly (0 | 1)[] = collarCode();

/** Steps round the pot. */
export const COLLAR_STEPS = 63;

function collarCode(): (0 | 1)[] {
  const code: number[] = [0, 1, 0, 1, 0, 1];
  while (code.length < 63) {
    const n = code.length - 6;
    const [a = 0, b = 0, c = 0, d = 0] = [code[n], code[n + 1], code[n + 4], code[n + 5]];
    code.push((a + b + c + d) % 2);
  }
  return code as (0 | 1)[];
}
