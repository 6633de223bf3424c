import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '..');

/** The one file that may load each outside library. */
const DOORS: Record<string, RegExp> = {
  'opencv-wasm': /^core\/opencv\/door\.ts$/,
  'onnxruntime-web': /^core\/canopy\/model\/onnx-door\.ts$/,
  sharp: /^server\/intake\//,
  'heic-decode': /^server\/intake\//,
  'exif-reader': /^server\/intake\//,
  'better-sqlite3': /^server\/store\//,
  cookie: /^server\/pairing\//,
  'cookie-signature': /^server\/pairing\//,
  idb: /^web\/src\/kept\//,
  'qrcode-generator': /^web\/src\/phones\/QrCode\.tsx$/,
};

/** What each layer may reach, beside outside libraries. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  core: ['core'],
  server: ['server', 'core'],
  web: ['web', 'core', 'server/schemas'],
};

interface Import {
  readonly file: string;
  readonly target: string;
  readonly typeOnly: boolean;
}

function sourceFiles(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.includes('node_modules'))
    .map((name) => `${folder}/${name}`);
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  const found: Import[] = [];
  const pattern =
    /(?:^|\n)\s*(?:import|export)\s+(type\s+)?(?:[^'"();]*?\sfrom\s+)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;
  for (const match of text.matchAll(pattern)) {
    const specifier = match[2] ?? match[3] ?? '';
    const target = specifier.startsWith('.') ? normalize(join(dirname(file), specifier)) : specifier;
    found.push({ file, target, typeOnly: match[1] !== undefined });
  }
  return found;
}

describe('the layers of the house', () => {
  const all = Object.keys(MAY_IMPORT).flatMap((layer) => sourceFiles(layer).flatMap(importsOf));

  it('are really read: every layer has imports to look at', () => {
    for (const layer of Object.keys(MAY_IMPORT)) {
      expect(all.filter((found) => found.file.startsWith(`${layer}/`)).length).toBeGreaterThan(10);
    }
  });

  for (const [layer, allowed] of Object.entries(MAY_IMPORT)) {
    it(`let ${layer} import only ${allowed.join(', ')}`, () => {
      const wrong = all
        .filter((found) => found.file.startsWith(`${layer}/`))
        .filter((found) => /^(core|server|web|tests|sample-images)\//.test(found.target))
        .filter((found) => !allowed.some((folder) => found.target.startsWith(`${folder}/`)));
      expect(wrong).toEqual([]);
    });
  }

  it('give web the types of the schemas and nothing that runs', () => {
    const running = all.filter(
      (found) => found.file.startsWith('web/') && found.target.startsWith('server/') && !found.typeOnly,
    );
    expect(running).toEqual([]);
  });

  it('keep core free of Node', () => {
    const node = all.filter((found) => found.file.startsWith('core/') && found.target.startsWith('node:'));
    expect(node).toEqual([]);
  });

  it('keep each outside library behind its one door', () => {
    const wrong = all.filter((found) => {
      const door = DOORS[found.target];
      return door !== undefined && !found.typeOnly && !door.test(found.file);
    });
    expect(wrong).toEqual([]);
  });
});
