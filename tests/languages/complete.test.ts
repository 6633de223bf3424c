import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../web/src/languages/reader.ts';
import { everyText } from './every-text.ts';

const texts = [...everyText()];
const translated = Object.keys(LANGUAGES).filter((language) => language !== 'en');

describe.each(translated)('the words in %s', (language) => {
  const entries: Readonly<Record<string, string>> = JSON.parse(
    readFileSync(new URL(`../../web/languages/${language}.json`, import.meta.url), 'utf8'),
  );

  it('know every text of the sources; `node --import tsx tests/languages/check.ts` lists what lacks', () =>
    expect(texts.filter(([text]) => !Object.hasOwn(entries, text))).toEqual([]));

  it('have the places of what they translate', () =>
    expect(
      Object.entries(entries).filter(
        ([text, translation]) => placesIn(text).join() !== placesIn(translation).join(),
      ),
    ).toEqual([]));

  it('are never empty', () =>
    expect(Object.keys(entries).filter((text) => entries[text]?.trim() === '')).toEqual([]));
});

describe('the texts of the sources', () => {
  // A filter that grows too wide would let everything pass.
  it('hold what the screens say', () => {
    const found = new Set(texts.map(([text]) => text));
    for (const said of ['Cut list', 'Add a plant', '{0} Play as a film']) expect(found).toContain(said);
  });
});

/** Places of a text, each once: a translation may say a value twice. */
function placesIn(text: string): string[] {
  return [...new Set(text.match(/\{\d+\}/g))].sort();
}
