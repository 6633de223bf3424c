// Sends seeded mutants of photos and requests: `nice -n 10 node --import tsx tests/faults/mutants.ts 10000 1`
// (how many, seed).
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mutantWords, sendMutants } from './mutant-requests.ts';

const count = Number(process.argv[2] ?? 10_000);
const seed = Number(process.argv[3] ?? 1);
const home = mkdtempSync(join(tmpdir(), 'rondure-mutants-'));
try {
  const onSent = (sent: number) => {
    if (sent % 500 === 0) process.stderr.write(`${sent} of ${count}\n`);
  };
  console.log(mutantWords(await sendMutants(home, { count, seed, onSent })));
} finally {
  rmSync(home, { recursive: true, force: true });
}
