import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

const PUBLIC = join(import.meta.dirname, '../../web/public');

/** The icons that phones put on their screen, all drawn from `icon.svg`; `npx tsx tests/web/app-icons.ts` writes them. */
export const APP_ICONS = [
  { file: 'icon-192.png', sizePx: 192, bleeds: false },
  { file: 'icon-512.png', sizePx: 512, bleeds: false },
  // Phones cut these to their own shape: ground to the edge, the sign within the inner four fifths (W3C Web App Manifest, safe zone).
  { file: 'icon-maskable-512.png', sizePx: 512, bleeds: true },
  { file: 'apple-touch-icon.png', sizePx: 180, bleeds: true },
] as const;

export function drawIcon({ sizePx, bleeds }: { sizePx: number; bleeds: boolean }): Promise<Buffer> {
  const svg = readFileSync(join(PUBLIC, 'icon.svg'), 'utf8');
  const drawn = bleeds
    ? svg
        .replace(/ rx="7"/, '')
        .replace('viewBox="0 0 32 32"', 'viewBox="-3 -3 38 38"')
        .replace('<rect width="32" height="32"', '<rect x="-3" y="-3" width="38" height="38"')
    : svg;
  return sharp(Buffer.from(drawn), { density: 72 * 20 })
    .resize(sizePx, sizePx)
    .png({ palette: true, effort: 10 })
    .toBuffer();
}

if (process.argv[1] === import.meta.filename) {
  for (const icon of APP_ICONS) writeFileSync(join(PUBLIC, icon.file), await drawIcon(icon));
}
