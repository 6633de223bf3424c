import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { collectTexts } from './collect-texts.ts';
import { NOT_FOR_READERS } from './not-for-readers.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Sources whose texts reach a reader of the screens. */
const FOLDERS = ['web/src', 'core', 'server'] as const;

/** Sources that speak to others: people who read the HTTP interface or type commands, the database, the network, the collar's code. */
const SPEAKS_TO_OTHERS =
  /^server\/(openapi|command-line|store)\/|^server\/(environment|main|serve)\.ts|^web\/src\/languages\/|^web\/src\/parts\/Icon\.tsx|^core\/(errors|canopy\/model)\/|^core\/turned\/collar\//;

/** Every text that a catalogue must know, with the first file that says it, in the order of files. */
export function everyText(): Map<string, string> {
  const texts = new Map<string, string>();
  for (const file of FOLDERS.flatMap(sourcesIn)) {
    if (SPEAKS_TO_OTHERS.test(file)) continue;
    for (const { text } of collectTexts(file, `${ROOT}${file}`)) {
      if (!texts.has(text) && !NOT_FOR_READERS.has(text)) texts.set(text, file);
    }
  }
  return texts;
}

function sourcesIn(folder: string): string[] {
  return readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => `${folder}/${name}`)
    .sort();
}
