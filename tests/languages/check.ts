import { readFileSync } from 'node:fs';
import { everyText } from './every-text.ts';

/** Prints what each language lacks and what nobody says any more, one text a line with its file; `--lacks de` alone as JSON, to be filled in. */
const texts = everyText();
const [flag, only] = process.argv.slice(2);

for (const language of ['de', 'nl']) {
  const entries: Record<string, string> = JSON.parse(
    readFileSync(new URL(`../../web/languages/${language}.json`, import.meta.url), 'utf8'),
  );
  const lacks = [...texts].filter(([text]) => !Object.hasOwn(entries, text));
  if (flag === '--lacks') {
    if (only === language) console.log(JSON.stringify(Object.fromEntries(lacks), null, 1));
    continue;
  }
  const stale = Object.keys(entries).filter((text) => !texts.has(text));
  console.log(
    `${language}: ${texts.size} texts, ${lacks.length} without words, ${stale.length} entries that no source says as a text`,
  );
  for (const [text, file] of lacks) console.log(`  ${file}: ${text}`);
}
