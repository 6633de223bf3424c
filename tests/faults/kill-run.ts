// Kills the server again and again while photos come in: `node --import tsx tests/faults/kill-run.ts 500`.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killServer, killWords } from './kill-server.ts';

const kills = Number(process.argv[2] ?? 100);
const home = mkdtempSync(join(tmpdir(), 'rondure-kills-'));
try {
  const told = (count: number) => {
    if (count % 10 === 0) process.stderr.write(`${count} of ${kills}\n`);
  };
  console.log(killWords(await killServer(home, kills, told)));
} finally {
  rmSync(home, { recursive: true, force: true });
}
