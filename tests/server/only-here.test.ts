import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { describe, expect, it } from 'vitest';
import { startServer } from '../faults/running-server.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

/** Whether anyone answers at an address. */
function answers(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const line = connect({ host, port, timeout: 3000 });
    const end = (did: boolean) => {
      line.destroy();
      resolve(did);
    };
    line.once('connect', () => end(true));
    line.once('error', () => end(false));
    line.once('timeout', () => end(false));
  });
}

describe('a server without settings', () => {
  it('listens on 127.0.0.1 and on no other address of the machine', async () => {
    const { HOST: _, ...bare } = process.env;
    const before = process.env;
    process.env = bare;
    const server = await startServer(temporaryFolder()).finally(() => {
      process.env = before;
    });
    try {
      const { hostname, port } = new URL(server.url);
      expect(hostname).toBe('127.0.0.1');
      expect(await answers('127.0.0.1', Number(port))).toBe(true);
      // All of 127/8 is this machine on Linux: whoever listens everywhere answers there too.
      const others = Object.values(networkInterfaces())
        .flatMap((one) => one ?? [])
        .map(({ address, scopeid }) => (scopeid ? `${address}%${scopeid}` : address))
        .filter((address) => address !== '127.0.0.1');
      const tried = [...new Set([...others, ...(process.platform === 'linux' ? ['127.0.0.2'] : [])])];
      for (const address of tried) expect(await answers(address, Number(port)), address).toBe(false);
      console.log(`listens on 127.0.0.1 only; ${tried.length} other addresses tried: 0 answer`);
    } finally {
      await server.end('SIGTERM');
    }
  }, 60_000);
});

describe('the headers of every answer', () => {
  it('work without https, keep content what it is called, and let no other site read', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const sent = await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    await bench.services.queue.whenIdle();
    const view = `/api/views/${sent.body.photos[0].view.id}`;
    const paths = [
      '/',
      '/no-such-page.js',
      '/api/bench',
      '/api/nothing',
      `${view}/picture`,
      `${view}/mask`,
      `/api/plants/${plant.id}/year.csv`,
      '/api/openapi.json',
    ];
    for (const path of paths) {
      const response = await fetch(bench.url + path, { headers: { origin: 'http://plants.example' } });
      await response.arrayBuffer();
      const policy = response.headers.get('content-security-policy') ?? '';
      expect(policy, path).toContain("default-src 'self'");
      // A home network has no certificate: told to go over to https, a phone would find nothing.
      expect(policy, path).not.toMatch(/upgrade-insecure-requests|block-all-mixed-content|https:/);
      expect(policy, path).not.toMatch(/script-src[^;]*unsafe|\*/);
      expect(response.headers.get('strict-transport-security'), path).toBeNull();
      expect(response.headers.get('x-content-type-options'), path).toBe('nosniff');
      const cors = [...response.headers.keys()].filter((name) => name.startsWith('access-control-'));
      expect(cors, path).toEqual([]);
    }
    const asked = await fetch(`${bench.url}/api/plants`, {
      method: 'OPTIONS',
      headers: { origin: 'http://plants.example', 'access-control-request-method': 'POST' },
    });
    expect([...asked.headers.keys()].filter((name) => name.startsWith('access-control-'))).toEqual([]);
    console.log(
      `headers: ${paths.length} addresses, each with a policy that works over http, nosniff, 0 CORS headers`,
    );
  });
});
