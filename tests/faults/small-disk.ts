import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';

/** A disk of 20 MB, gone after the test. */
export function smallDisk(): string {
  const folder = join(temporaryFolder(), 'disk');
  mkdirSync(folder);
  execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=20m', 'none', folder]);
  onTestFinished(() => void execFileSync('umount', ['-l', folder]));
  return folder;
}

/** Only the system's first user may make a disk, and not in every container. */
export function canMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'rondure-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'none', folder], { stdio: 'ignore' });
    execFileSync('umount', [folder]);
    return true;
  } catch {
    return false;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
