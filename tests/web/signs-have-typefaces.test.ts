import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { everyText } from '../languages/every-text.ts';

const WEB = join(import.meta.dirname, '../../web');
const require = createRequire(import.meta.url);

/** Whether a sheet of styles says of a sign that one of its typefaces has it (`unicode-range`, CSS Fonts 4). */
function hasTypeface(css: string): (sign: string) => boolean {
  const ranges = [...css.matchAll(/unicode-range:\s*([^;]+);/g)]
    .flatMap(([, list = '']) => list.split(','))
    .map((range) => {
      const [, from = '', to = from] = /U\+([0-9A-F]+)(?:-([0-9A-F]+))?/i.exec(range) ?? [];
      return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const;
    });
  return (sign) => {
    const code = sign.codePointAt(0) as number;
    return ranges.some(([from, to]) => from <= code && code <= to);
  };
}

function textsOfScreens(): Map<string, string> {
  const texts = new Map(everyText());
  for (const language of ['de', 'nl']) {
    const words = JSON.parse(readFileSync(join(WEB, `languages/${language}.json`), 'utf8'));
    for (const text of Object.values<string>(words)) texts.set(text, `${language}.json`);
  }
  for (const name of readdirSync(join(WEB, 'src'), { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.css')) continue;
    const css = readFileSync(join(WEB, 'src', name), 'utf8');
    for (const [, text = ''] of css.matchAll(/content:\s*"([^"]*)"/g)) texts.set(text, name);
  }
  return texts;
}

describe('every sign on the screens', () => {
  const shipped = [
    readFileSync(require.resolve('@fontsource-variable/commissioner/wght.css'), 'utf8'),
    readFileSync(join(WEB, 'src/style/base.css'), 'utf8'),
  ].join('\n');
  const isShipped = hasTypeface(shipped);

  it('is in a typeface that comes with the app, whatever the machine has', () => {
    const lacking = [...textsOfScreens()]
      .map(([text, file]) => [file, [...text].filter((sign) => !isShipped(sign)).join('')])
      .filter(([, signs]) => signs !== '');
    expect(lacking).toEqual([]);
  });

  it('would be missed', () => {
    expect(isShipped('▲')).toBe(true);
    expect(isShipped('☂')).toBe(false);
  });
});
