import { parseArgs } from 'node:util';
import { type Folder, foldersUnder } from './folders.ts';
import { type Scored, scorePhoto } from './score-photo.ts';
import { writeSheet } from './sheet.ts';
import { printFolder } from './table.ts';

/**
 * Scores the canopy cut-out against masks, folder by folder.
 *
 *   npm run score -- [--sheet worst.png] [--only NAME] DIR...
 *
 * A DIR holds `images/` and `masks/`, or several such folders, or photos with NAME.canopy.png beside them.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sheet: { type: 'string' },
    worst: { type: 'string' },
    only: { type: 'string' },
    each: { type: 'boolean' },
  },
});
const folders: Folder[] = (positionals.length > 0 ? positionals : ['../shared/photos']).flatMap(foldersUnder);
if (folders.length === 0) {
  process.stderr.write('No photos with masks were found. Name a folder that holds images/ and masks/.\n');
  process.exit(2);
}
const all: Scored[] = [];
for (const folder of folders) {
  const scored: Scored[] = [];
  for (const pair of folder.pairs) {
    if (values.only !== undefined && !pair.name.includes(values.only)) continue;
    scored.push(await scorePhoto(pair));
  }
  if (scored.length === 0) continue;
  printFolder(folder.name, scored, values.each === true);
  all.push(...scored);
}
if (values.sheet !== undefined) await writeSheet(values.sheet, all, Number(values.worst ?? 10));
