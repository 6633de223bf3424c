import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';

/** The program itself, started on a data home. */
export interface RunningServer {
  readonly url: string;
  /** From the start to the line that says where it is. */
  readonly readyMs: number;
  readonly process: ChildProcess;
  /** Sends a signal; how long the program takes to end, and its exit code. */
  end(signal: 'SIGTERM' | 'SIGKILL'): Promise<{ code: number | null; tookMs: number }>;
}

/** The product's own program. */
export const WHOLE = 'server/main.ts';
/** The same without measuring threads: it starts in a fraction of the time. */
export const BARE = 'tests/faults/fixtures/bare-server.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Starts Rondure on a free port; rejects with what it printed when it ends before it serves. */
export async function startServer(
  home: string,
  {
    through = [],
    program = WHOLE,
    environment = {},
  }: { through?: string[]; program?: string; environment?: Record<string, string> } = {},
): Promise<RunningServer> {
  const startedAt = performance.now();
  const [command = '', ...words] = [...through, process.execPath, '--import', 'tsx', program];
  const child = spawn(command, words, {
    cwd: ROOT,
    env: {
      ...process.env,
      PORT: '0',
      RONDURE_HOME: home,
      RONDURE_SAMPLES: 'off',
      RONDURE_NETWORK: 'off',
      ...environment,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  let printed = '';
  const url = await new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (part: Buffer) => {
        printed += part.toString('utf8');
        const address = /Rondure is at (\S+)/.exec(printed)?.[1];
        if (address) resolve(address);
      });
    }
    ended.then(() => reject(new Error(`The server ended before it served:\n${printed}`)));
  });
  return {
    url,
    readyMs: performance.now() - startedAt,
    process: child,
    async end(signal) {
      const toldAt = performance.now();
      child.kill(signal);
      return { code: await ended, tookMs: performance.now() - toldAt };
    },
  };
}
