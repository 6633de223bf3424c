import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { APP_ICONS, drawIcon } from './app-icons.ts';

const WEB = join(import.meta.dirname, '../../web');
const manifest = JSON.parse(readFileSync(join(WEB, 'public/app.webmanifest'), 'utf8'));

const pixels = (png: Buffer) => sharp(png).ensureAlpha().raw().toBuffer();

describe('the app on a phone’s screen', () => {
  it.each(APP_ICONS.map((icon) => [icon.file, icon] as const))(
    'has %s as icon.svg draws it',
    async (file, icon) => {
      const kept = readFileSync(join(WEB, 'public', file));
      const { width, height } = await sharp(kept).metadata();
      expect([width, height]).toEqual([icon.sizePx, icon.sizePx]);
      const [is, wanted] = await Promise.all([pixels(kept), pixels(await drawIcon(icon))]);
      const apart = is.reduce((sum, value, k) => sum + Math.abs(value - (wanted[k] ?? 0)), 0) / is.length;
      // Another version of the drawing library may round edges otherwise.
      expect(apart).toBeLessThan(1);
    },
  );

  it('names icons that are there, in the sizes that installing asks for, one of them to be cut to shape', () => {
    const sizes = manifest.icons.map(({ sizes: size }: { sizes: string }) => size);
    expect(sizes).toEqual(expect.arrayContaining(['192x192', '512x512']));
    expect(manifest.icons.some(({ purpose }: { purpose?: string }) => purpose === 'maskable')).toBe(true);
    for (const { src } of manifest.icons) expect(() => readFileSync(join(WEB, 'public', src))).not.toThrow();
  });

  it('takes its colours from the tokens, in the manifest and in the page', () => {
    const tokens = readFileSync(join(WEB, 'src/style/tokens.css'), 'utf8');
    const grounds = [...tokens.matchAll(/--ground: (#[0-9a-f]{6})/g)].map(([, colour]) => colour);
    expect([manifest.theme_color, manifest.background_color]).toEqual([grounds[0], grounds[0]]);
    const page = readFileSync(join(WEB, 'index.html'), 'utf8');
    const themes = [...page.matchAll(/name="theme-color" content="(#[0-9a-f]{6})"/g)].map(
      ([, colour]) => colour,
    );
    expect(themes).toEqual(grounds);
  });
});
