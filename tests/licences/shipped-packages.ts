import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const lockSchema = z.object({
  packages: z.record(
    z.string(),
    z.object({
      version: z.string().optional(),
      license: z.string().optional(),
      dev: z.boolean().optional(),
    }),
  ),
});
const named = z.union([z.string(), z.object({ type: z.string() })]);
const packageSchema = z.object({ license: named.optional(), licenses: z.array(named).optional() });

export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  /** By SPDX, as the package tells it; `null` when it tells none. */
  readonly licence: string | null;
}

/** Every package of the lock file that is not for development alone, with the licence that its own package.json tells, else the lock file, else its LICENSE file. */
export function shippedPackages(root: string, lock: unknown): ShippedPackage[] {
  return Object.entries(lockSchema.parse(lock).packages)
    .filter(([path, { dev }]) => path !== '' && dev !== true)
    .map(([path, { version, license }]) => ({
      name: path.split('node_modules/').at(-1) ?? path,
      version: version ?? 'of no version',
      licence: licenceOf(join(root, path, 'package.json')) ?? license ?? licenceInFile(join(root, path)),
    }));
}

function licenceOf(path: string): string | null {
  // A package for another system is not laid out here; the lock file knows it.
  if (!existsSync(path)) return null;
  const { license, licenses } = packageSchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  const all = (license === undefined ? (licenses ?? []) : [license]).map((one) =>
    typeof one === 'string' ? one : one.type,
  );
  return all.length === 0 ? null : all.join(' OR ');
}

/** The words that make a text the MIT licence (opensource.org/license/mit). */
const MIT_WORDS =
  /Permission is hereby granted, free of charge, to any person obtaining a copy[\s\S]*THE SOFTWARE IS PROVIDED "AS IS"/;

/** A package whose package.json tells nothing may still hold the text; only the MIT one is known here. */
function licenceInFile(folder: string): string | null {
  const path = join(folder, 'LICENSE');
  if (!existsSync(path)) return null;
  return MIT_WORDS.test(readFileSync(path, 'utf8')) ? 'MIT' : null;
}

/** Licences that ask for no more than that their text goes along, by their SPDX names. */
const PERMISSIVE = new Set([
  'MIT',
  'MIT-0',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'Unlicense',
  'CC0-1.0',
  'Zlib',
  'BlueOak-1.0.0',
  'Python-2.0',
  'WTFPL',
]);

/** Licences that ask for more, and why they may be shipped as they are. */
const SETTLED: Readonly<Record<string, string>> = {
  'LGPL-3.0': 'Used unchanged as a library of its own in node_modules, which anyone can replace.',
  'LGPL-3.0-or-later': 'Used unchanged as a library of its own in node_modules, which anyone can replace.',
  'MPL-2.0': 'Used unchanged while the screens are built; its files stay under their licence.',
  'OFL-1.1': 'A typeface, embedded and not sold by itself.',
};

export type Verdict =
  | { readonly kind: 'permissive' }
  /** `settled`: shipped knowingly; `open`: somebody has to look. */
  | { readonly kind: 'settled' | 'open'; readonly why: string };

/** How a package's licence is to be taken: of alternatives the freest counts, of several at once the strictest. */
export function judged({ licence }: ShippedPackage): Verdict {
  if (licence === null)
    return { kind: 'open', why: 'It tells no licence: read its files, or do without it.' };
  const ways = licence
    .replaceAll(/[()]/g, '')
    .split(' OR ')
    .map((way) => strictest(way.split(' AND ').map(verdictOn)));
  return (
    ways.find(({ kind }) => kind === 'permissive') ??
    ways.find(({ kind }) => kind === 'settled') ??
    (ways[0] as Verdict)
  );
}

function verdictOn(licence: string): Verdict {
  if (PERMISSIVE.has(licence)) return { kind: 'permissive' };
  const why = SETTLED[licence];
  return why === undefined
    ? { kind: 'open', why: 'It is not known as permissive: read it, or do without the package.' }
    : { kind: 'settled', why };
}

function strictest(all: readonly Verdict[]): Verdict {
  return (
    all.find(({ kind }) => kind === 'open') ??
    all.find(({ kind }) => kind === 'settled') ?? { kind: 'permissive' }
  );
}
