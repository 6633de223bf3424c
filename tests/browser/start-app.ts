import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '../..');

/** The product itself, started as a grower starts it, over an empty home of its own. */
export interface RunningApp {
  readonly url: string;
  stop(): Promise<void>;
}

/**
 * Starts the server on a free port and resolves when it says its address.
 *
 * @param samples `off` spares a test that brings its own plants the measuring of the sample bench beside it
 * @param host where it listens; `0.0.0.0` for the home network too
 */
export async function startApp(samples: 'on' | 'off' = 'on', host = '127.0.0.1'): Promise<RunningApp> {
  const home = mkdtempSync(join(tmpdir(), 'rondure-browser-'));
  const server = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: ROOT,
    env: { ...process.env, RONDURE_HOME: home, RONDURE_SAMPLES: samples, PORT: '0', HOST: host },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  let said = '';
  const url = await new Promise<string>((resolve, reject) => {
    const read = (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/\S+(?=\s)/.exec(said);
      if (address) resolve(address[0]);
    };
    server.stdout.on('data', read);
    server.stderr.on('data', read);
    server.once('exit', (code) => reject(new Error(`The server stopped with ${code} and said: ${said}`)));
  });
  return {
    url,
    async stop() {
      server.kill('SIGTERM');
      await ended;
      rmSync(home, { recursive: true, force: true });
    },
  };
}
