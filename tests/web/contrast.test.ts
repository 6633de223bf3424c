import { readFileSync } from 'node:fs';
import { wcagContrast } from 'culori';
import { describe, expect, it } from 'vitest';

/**
 * Contrast of words and numbers against what they stand on, from the one file of colours. 7 : 1 is success criterion 1.4.6 (level AAA) of the Web Content
 * Accessibility Guidelines 2.2; 3 : 1 for lines that carry meaning is 1.4.11.
 */
const css = readFileSync(new URL('../../web/src/style/tokens.css', import.meta.url), 'utf8');
const [lightRules, darkRules] = css.split('[data-shade="dark"]') as [string, string];
const light = tokensIn(lightRules);
const dark = new Map([...light, ...tokensIn(darkRules)]);

function tokensIn(rules: string): Map<string, string> {
  return new Map(
    [...rules.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [
      name as string,
      colour as string,
    ]),
  );
}

const WORDS = ['ink', 'ink-soft', 'act', 'act-hover', 'today', 'week'];
const GROUNDS = ['ground', 'sheet', 'sunk'];
const LINES = ['line-strong', 'trace', 'focus'];

describe.each([
  ['light', light],
  ['dark', dark],
] as const)('in the %s shade', (_, tokens) => {
  const contrast = (one: string, other: string) =>
    wcagContrast(tokens.get(one) as string, tokens.get(other) as string);

  it.each(WORDS.flatMap((word) => GROUNDS.map((ground) => [word, ground] as const)))(
    '%s reads on %s',
    (word, ground) => {
      expect(contrast(word, ground)).toBeGreaterThanOrEqual(7);
    },
  );

  it.each([
    ['on-act', 'act'],
    ['on-act', 'act-hover'],
    ['today', 'today-wash'],
    ['ink', 'today-wash'],
    ['ink', 'band'],
  ])('%s reads on %s', (word, ground) => expect(contrast(word, ground)).toBeGreaterThanOrEqual(7));

  it.each(LINES.flatMap((line) => GROUNDS.map((ground) => [line, ground] as const)))(
    '%s is seen on %s',
    (line, ground) => {
      expect(contrast(line, ground)).toBeGreaterThanOrEqual(3);
    },
  );

  it.each([
    ['draw-plate-ink', 'draw-plate'],
    ['draw-cut', 'draw-plate'],
    ['draw-ink', 'draw-cut'],
  ])('on a photo %s reads on %s', (word, ground) => expect(contrast(word, ground)).toBeGreaterThanOrEqual(7));
});
