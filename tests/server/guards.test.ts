import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';

/** The status of a request with headers that fetch would not send. */
function statusOf(
  url: string,
  path: string,
  method: string,
  headers: Record<string, string>,
): Promise<number> {
  return new Promise((resolve, reject) => {
    request(url + path, { method, headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    })
      .on('error', reject)
      .end();
  });
}

describe('a server on this machine', () => {
  it('answers under its local names only', async () => {
    const { url } = await openBench();
    const status = (host: string) => statusOf(url, '/api/bench', 'GET', { host });
    expect(await status('localhost:4170')).toBe(200);
    expect(await status('127.0.0.1')).toBe(200);
    expect(await status('[::1]:4170')).toBe(200);
    expect(await status('plants.example:4170')).toBe(403);
    expect(await status('localhost.plants.example')).toBe(403);
  });

  it('takes changes from its own pages only', async () => {
    const { url } = await openBench();
    const post = (origin: string) => statusOf(url, '/api/sample/put-away', 'POST', { origin });
    expect(await post(url)).toBe(204);
    expect(await post('http://plants.example')).toBe(403);
    expect(await post('null')).toBe(403);
  });

  it('sends the headers that keep a page to itself, and lets no other site read', async () => {
    const { send } = await openBench();
    const { headers } = await send('GET', '/api/bench');
    expect(headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('access-control-allow-origin')).toBeNull();
    expect(headers.get('x-powered-by')).toBeNull();
    expect(headers.get('cache-control')).toBe('no-store');
  });

  it('serves the built screen, its files, and the one page for every other address', async () => {
    const webFolder = temporaryFolder();
    mkdirSync(join(webFolder, 'assets'));
    writeFileSync(join(webFolder, 'index.html'), '<title>bench</title>');
    writeFileSync(join(webFolder, 'assets/app.js'), 'export {}');
    const { send } = await openBench({ webFolder });
    for (const path of ['/', '/plants/abc', '/plants/abc/sittings/def']) {
      expect((await send('GET', path)).body.toString()).toBe('<title>bench</title>');
    }
    expect((await send('GET', '/assets/app.js')).headers.get('cache-control')).toContain('immutable');
    expect((await send('GET', '/assets/lost.js')).status).toBe(404);
    expect((await send('GET', '/../package.json')).status).toBe(404);
  });

  it('says how to build the screen when that was not done', async () => {
    const { send } = await openBench();
    const answer = await send('GET', '/');
    expect(answer.status).toBe(503);
    expect(answer.body.detail).toContain('npm run build');
  });
});
