import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';

/** A photo with the mask it is scored against. */
export interface Pair {
  readonly name: string;
  readonly photo: string;
  readonly mask: string;
  /** Mask of plant and pot together. */
  readonly maskWithPot: string | null;
  readonly empty: string | null;
  readonly truth: Truth | null;
}

/** What a render knows of itself, px of the photo. */
export interface Truth {
  readonly mmPerPx?: number;
  readonly rimMm?: number;
  readonly axis?: { readonly rimLeftPx: [number, number]; readonly rimRightPx: [number, number] } | null;
  readonly empty?: string | null;
}

export interface Folder {
  readonly name: string;
  readonly pairs: readonly Pair[];
}

const PHOTO = /\.(jpe?g|png|webp)$/i;

/** The scorable folders at or just under `dir`. */
export function foldersUnder(dir: string): Folder[] {
  if (!existsSync(dir)) return [];
  const here = folderAt(dir);
  if (here !== null) return [here];
  return readdirSync(dir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => folderAt(join(dir, entry.name)))
    .filter((folder) => folder !== null);
}

function folderAt(dir: string): Folder | null {
  const pairs = existsSync(join(dir, 'images')) ? masksApart(dir) : masksBeside(dir);
  return pairs.length === 0 ? null : { name: basename(dir), pairs };
}

function masksApart(dir: string): Pair[] {
  return readdirSync(join(dir, 'images'))
    .filter((file) => PHOTO.test(file))
    .map((file) => {
      const name = basename(file, extname(file));
      const mask = join(dir, 'masks', `${name}.png`);
      const withPot = join(dir, 'masks_withpot', `${name}.png`);
      const maskWithPot = existsSync(withPot) ? withPot : null;
      return { name, photo: join(dir, 'images', file), mask, maskWithPot, empty: null, truth: null };
    })
    .filter((pair) => existsSync(pair.mask));
}

function masksBeside(dir: string): Pair[] {
  return readdirSync(dir)
    .filter((file) => PHOTO.test(file) && !file.endsWith('.canopy.png'))
    .map((file) => {
      const name = basename(file, extname(file));
      const truthFile = join(dir, `${name}.truth.json`);
      const truth = existsSync(truthFile) ? (JSON.parse(readFileSync(truthFile, 'utf8')) as Truth) : null;
      // The truth names the empty photo by its path from the folder of all series.
      const empty = truth?.empty ? join(dir, basename(truth.empty)) : null;
      const mask = join(dir, `${name}.canopy.png`);
      return { name, photo: join(dir, file), mask, maskWithPot: null, empty, truth };
    })
    .filter((pair) => existsSync(pair.mask));
}
