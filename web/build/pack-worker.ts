import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Plugin, transformWithOxc } from 'vite';

const WORKER = join(import.meta.dirname, '../worker/worker.ts');
const PUBLIC = join(import.meta.dirname, '../public');

/** Scripts of letters that none of the app's languages is written in come from the network when a name needs one. */
const OTHER_SCRIPTS = /-(cyrillic|greek|vietnamese)/;

/** Puts the service worker beside the built app, told which files make up this build and what it is called. */
export function packWorker(): Plugin {
  return {
    name: 'pack-worker',
    apply: 'build',
    generateBundle: {
      // The page itself is put in by a hook that comes late.
      order: 'post',
      async handler(_options, bundle) {
        const built = Object.keys(bundle).filter((file) => !OTHER_SCRIPTS.test(file));
        const given = readdirSync(PUBLIC);
        const files = [...built, ...given].sort().map((file) => (file === 'index.html' ? '/' : `/${file}`));
        // Built files carry a hash of what is in them in their names; the page and the given files do not.
        const hash = createHash('sha256').update(files.join('\n'));
        const page = bundle['index.html'];
        if (page?.type !== 'asset') throw new TypeError('Expected the built index.html but received none');
        hash.update(page.source);
        for (const file of given) hash.update(readFileSync(join(PUBLIC, file)));
        const shell = { version: hash.digest('hex').slice(0, 16), files };
        const source = readFileSync(WORKER, 'utf8');
        const { code } = await transformWithOxc(source, WORKER);
        this.emitFile({
          type: 'asset',
          fileName: 'worker.js',
          source: `const SHELL = ${JSON.stringify(shell)};\n${code}`,
        });
      },
    },
  };
}
