// Makes the gallery of the sample plants as one HTML file: `npm run gallery -- [options]`.
//   --out FILE   where it goes; else rondure-gallery.html in the system's folder for passing things
//   --only NAME  photos whose name contains this; --every N takes each N-th
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Exhibit, measureSample } from './measure-sample.ts';
import { galleryPage } from './page.ts';
import { samplePhotos } from './sample-photos.ts';

const wanted = readOptions();
const chosen = (await samplePhotos())
  .filter(({ file }) => file.includes(wanted.only))
  .filter((_, index) => index % wanted.every === 0);
if (chosen.length === 0)
  refuse(`No sample photo has "${wanted.only}" in its name. Leave --only out to see all.`);

// One after the other: the gallery is made beside other work.
const exhibits: Exhibit[] = [];
for (const sample of chosen) {
  exhibits.push(await measureSample(sample));
  if (process.stderr.isTTY) process.stderr.write(`\r${exhibits.length} of ${chosen.length} photos`);
}
if (process.stderr.isTTY) process.stderr.write('\n');
try {
  await writeFile(wanted.out, await galleryPage(exhibits));
} catch (fault) {
  const code = (fault as NodeJS.ErrnoException).code;
  if (code === undefined) throw fault;
  refuse(`The gallery cannot be written to ${wanted.out} (${code}). Name another file with --out.`);
}
process.stdout.write(`${wanted.out}\n`);

function readOptions() {
  try {
    const { values } = parseArgs({
      options: {
        out: { type: 'string', default: join(tmpdir(), 'rondure-gallery.html') },
        only: { type: 'string', default: '' },
        every: { type: 'string', default: '1' },
      },
    });
    const every = Number(values.every);
    if (!(Number.isInteger(every) && every >= 1)) {
      refuse(`--every needs a whole number of at least 1, not "${values.every}".`);
    }
    return { out: resolve(values.out), only: values.only, every };
  } catch (fault) {
    return refuse(`${fault instanceof Error ? fault.message : fault}`);
  }
}

function refuse(words: string): never {
  process.stderr.write(`${words}\n`);
  process.exit(2);
}
