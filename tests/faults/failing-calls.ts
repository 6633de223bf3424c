import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readSync, writeFileSync, writeSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';

const SOURCE = join(import.meta.dirname, 'fixtures/failing-calls.c');
/** So far off that it never comes. */
const NEVER = 2n ** 60n;

/** The system's calls of a process, of which the n-th may fail. */
export interface FailingCalls {
  /** For the process that is to fail. */
  readonly environment: Record<string, string>;
  /** Lets the n-th call from now on fail that writes or syncs in the folder. */
  failOn(n: number, code: 'EIO' | 'ENOSPC'): void;
  hasFailed(): boolean;
  heal(): void;
  /** Calls seen since the process began. */
  seen(): number;
}

/** Whether this machine can lay a library under a process: it needs Linux and a C compiler. */
export function canLayUnder(): boolean {
  return process.platform === 'linux' && spawnSync('cc', ['--version']).status === 0;
}

/** Builds the library that stands between a process and the system's file calls in `folder`. */
export function failingCalls(folder: string): FailingCalls {
  const made = temporaryFolder();
  const library = join(made, 'failing-calls.so');
  const built = spawnSync('cc', ['-O1', '-shared', '-fPIC', '-o', library, SOURCE, '-ldl'], {
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(`The library of failing calls was not built: ${built.stderr}`);
  const path = join(made, 'control');
  const write = (left: bigint, error: number) => {
    const words = new BigInt64Array([left, BigInt(error)]);
    const file = openSync(path, 'r+');
    writeSync(file, Buffer.from(words.buffer), 0, 16, 0);
    closeSync(file);
  };
  const read = (at: number): bigint => {
    const word = Buffer.alloc(8);
    const file = openSync(path, 'r');
    readSync(file, word, 0, 8, at);
    closeSync(file);
    return word.readBigInt64LE();
  };
  writeFileSync(path, Buffer.alloc(24));
  write(NEVER, 0);
  return {
    // Else Node hands some writes to the kernel past the library's functions.
    environment: { LD_PRELOAD: library, FAIL_UNDER: folder, FAIL_CONTROL: path, UV_USE_IO_URING: '0' },
    failOn: (n, code) => write(BigInt(n), constants.errno[code]),
    hasFailed: () => read(0) <= 0n,
    heal: () => write(NEVER, 0),
    seen: () => Number(read(16)),
  };
}
