import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const WEB = join(import.meta.dirname, '../../web');
const TOKENS = 'style/tokens.css';
/** A colour written as such: `#rrggbb` and its short forms after a sign that begins a value, or a colour function given numbers. */
const COLOUR = /[\s:'"(,]#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})\b|\b(?:rgb|hsl|lab|lch|oklch)a?\(\s*\d/gi;

const read = (path: string) => readFileSync(join(WEB, path), 'utf8');
const tokens = read(`src/${TOKENS}`);
const [light, dark] = [...tokens.matchAll(/--ground: (#[0-9a-f]{6});/g)].map(([, colour]) => colour);

describe('colours', () => {
  it('are named in one file of custom properties only', () => {
    const strays = readdirSync(join(WEB, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(css|tsx?)$/.test(path) && path !== TOKENS)
      .flatMap((path) =>
        (read(`src/${path}`).match(COLOUR) ?? []).map((colour) => `${path}: ${colour.trim()}`),
      );
    expect(strays).toEqual([]);
    expect(tokens.match(COLOUR)?.length).toBeGreaterThan(40);
  });

  it('of the bar around the page, where no property reaches, are those of the ground', () => {
    expect(read('index.html')).toContain(`content="${light}" media="(prefers-color-scheme: light)"`);
    expect(read('index.html')).toContain(`content="${dark}" media="(prefers-color-scheme: dark)"`);
    expect(JSON.parse(read('public/app.webmanifest'))).toMatchObject({
      background_color: light,
      theme_color: light,
    });
  });
});
