// Kills the server again and again while photos come in: `node --import tsx tests/faults/kill-run.ts 500`,
// with `--whole` the program as it is, measuring threads included.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killServer, killWords } from './kill-server.ts';
import { BARE, WHOLE } from './running-server.ts';

const kills = Number(process.argv[2] ?? 100);
const home = mkdtempSync(join(tmpdir(), 'rondure-kills-'));
try {
  const program = process.argv.includes('--whole') ? WHOLE : BARE;
  const onKill = (count: number) => {
    if (count % 10 === 0) process.stderr.write(`${count} of ${kills}\n`);
  };
  console.log(killWords(await killServer(home, kills, { program, onKill })));
} finally {
  rmSync(home, { recursive: true, force: true });
}
