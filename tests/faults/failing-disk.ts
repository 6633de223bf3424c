import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { onTestFinished } from 'vitest';

/** Calls to the disk that change it, each of which may fail. */
export interface FailingDisk {
  /** Lets the n-th call from now on fail with `code`. */
  failOn(n: number, code: 'EIO' | 'ENOSPC'): void;
  hasFailed(): boolean;
  /** Lets nothing fail any more. */
  heal(): void;
}

/**
 * Puts a disk that can be told to fail under Node's own file functions, for this test: writing, syncing, renaming, opening
 * to write, making folders. The product's code knows nothing of it.
 */
export async function failingDisk(folder: string): Promise<FailingDisk> {
  const probe = await fs.promises.open(folder, 'r');
  const fileHandle = Object.getPrototypeOf(probe);
  await probe.close();
  let left = Number.POSITIVE_INFINITY;
  let code = '';

  function failure(): Error | null {
    left -= 1;
    return left === 0 ? Object.assign(new Error(`${code}: injected`), { code }) : null;
  }

  const undo: (() => void)[] = [];
  function replace(owner: object, name: string, make: (real: never) => unknown): void {
    const real = Reflect.get(owner, name);
    Reflect.set(owner, name, make(real as never));
    undo.push(() => Reflect.set(owner, name, real));
  }
  type Async = (...args: unknown[]) => Promise<unknown>;
  const rejecting = (real: Async) =>
    function (this: unknown, ...args: unknown[]) {
      const failed = failure();
      return failed === null ? real.apply(this, args) : Promise.reject(failed);
    };
  for (const name of ['sync', 'writeFile', 'write']) replace(fileHandle, name, rejecting);
  for (const name of ['rename', 'mkdir', 'writeFile', 'link']) replace(fs.promises, name, rejecting);
  replace(fs.promises, 'open', (real: Async) => (path: unknown, flags: unknown, ...more: unknown[]) => {
    const failed = flags === 'r' ? null : failure();
    return failed === null ? real(path, flags, ...more) : Promise.reject(failed);
  });
  // The upload library's streams write by these; `this` matters to neither.
  type Called = (...args: unknown[]) => void;
  for (const name of ['write', 'writev']) {
    replace(fs, name, (real: Called) => (...args: unknown[]) => {
      const failed = failure();
      const done = args.at(-1) as (fault: Error) => void;
      if (failed === null || typeof done !== 'function') real(...args);
      else process.nextTick(done, failed);
    });
  }
  syncBuiltinESMExports();
  onTestFinished(() => {
    for (const step of undo) step();
    syncBuiltinESMExports();
  });
  return {
    failOn(n, wanted) {
      [left, code] = [n, wanted];
    },
    hasFailed: () => left <= 0,
    heal() {
      left = Number.POSITIVE_INFINITY;
    },
  };
}
