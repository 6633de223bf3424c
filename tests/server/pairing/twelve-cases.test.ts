import { describe, expect, it } from 'vitest';
import type { Machine } from '../../../server/pairing/known-names.ts';
import { openBench } from '../fixtures/open-bench.ts';
import { rawRequest } from './raw-request.ts';

// The attacks are those of the OWASP Cross-Site Request Forgery Prevention Cheat Sheet (origin check, Fetch
// Metadata) and of DNS rebinding (Jackson, Barth, Bortz, Shao, Boneh: Protecting Browsers from DNS Rebinding
// Attacks, 2007, section 5: check of the Host header). Header meanings: RFC 6454, W3C Fetch Metadata.

const MACHINE: Machine = { hostName: 'Potting-Shed', addresses: () => ['192.0.2.7', '2001:db8::7'] };
const BROWSER = { 'user-agent': 'Mozilla/5.0 (invented)' };

interface Case {
  readonly what: string;
  readonly method: 'GET' | 'POST';
  readonly headers: (port: string) => Record<string, string>;
  readonly status: number;
}

const CHANGE = '/api/sample/put-away';
const READ = '/api/bench';

const CASES: readonly Case[] = [
  {
    what: 'the own page changes something',
    method: 'POST',
    headers: (port) => ({
      ...BROWSER,
      host: `localhost:${port}`,
      origin: `http://localhost:${port}`,
      'sec-fetch-site': 'same-origin',
    }),
    status: 204,
  },
  {
    what: 'the own page over an address of this machine comes as far as the door',
    method: 'POST',
    headers: (port) => ({ ...BROWSER, host: `192.0.2.7:${port}`, origin: `http://192.0.2.7:${port}` }),
    status: 401,
  },
  {
    what: 'a foreign name made to point here reads (rebinding)',
    method: 'GET',
    headers: (port) => ({ ...BROWSER, host: `plants.example:${port}` }),
    status: 403,
  },
  {
    what: 'a foreign name made to point here changes, its origin agreeing (rebinding)',
    method: 'POST',
    headers: (port) => ({
      ...BROWSER,
      host: `plants.example:${port}`,
      origin: `http://plants.example:${port}`,
      'sec-fetch-site': 'same-origin',
    }),
    status: 403,
  },
  {
    what: 'a name that begins like ours but goes on',
    method: 'GET',
    headers: (port) => ({ ...BROWSER, host: `localhost.plants.example:${port}` }),
    status: 403,
  },
  {
    what: 'another site sends a form',
    method: 'POST',
    headers: (port) => ({ ...BROWSER, host: `localhost:${port}`, origin: 'http://plants.example' }),
    status: 403,
  },
  {
    what: 'a page of another port of this machine changes something',
    method: 'POST',
    headers: (port) => ({ ...BROWSER, host: `localhost:${port}`, origin: 'http://localhost:9' }),
    status: 403,
  },
  {
    what: 'a sandboxed frame or a file changes something (null origin)',
    method: 'POST',
    headers: (port) => ({ ...BROWSER, host: `localhost:${port}`, origin: 'null' }),
    status: 403,
  },
  {
    what: 'a browser that hides where a change comes from (missing origin)',
    method: 'POST',
    headers: (port) => ({ ...BROWSER, host: `localhost:${port}` }),
    status: 403,
  },
  {
    what: 'an own origin beside a cross-site mark',
    method: 'POST',
    headers: (port) => ({
      ...BROWSER,
      host: `localhost:${port}`,
      origin: `http://localhost:${port}`,
      'sec-fetch-site': 'cross-site',
    }),
    status: 403,
  },
  {
    what: 'another site loads data as if it were a picture',
    method: 'GET',
    headers: (port) => ({
      ...BROWSER,
      host: `localhost:${port}`,
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'no-cors',
    }),
    status: 403,
  },
  {
    what: 'a program at the desk, no browser, changes something',
    method: 'POST',
    headers: (port) => ({ host: `localhost:${port}` }),
    status: 204,
  },
];

describe('host and origin on the home network', () => {
  it('is a table of twelve cases', () => expect(CASES).toHaveLength(12));

  it.each(CASES.map((one) => [one.what, one] as const))('%s', async (_, { method, headers, status }) => {
    const { url } = await openBench({ host: '0.0.0.0', machine: MACHINE });
    const port = new URL(url).port;
    const answer = await rawRequest(url, method === 'GET' ? READ : CHANGE, {
      method,
      headers: headers(port),
    });
    expect(answer.status).toBe(status);
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('knows the machine by its addresses and its names only', async () => {
    const { url } = await openBench({ host: '0.0.0.0', machine: MACHINE });
    const status = async (host: string) => (await rawRequest(url, '/', { headers: { host } })).status;
    // 503: the screens are not built here, and the request came that far.
    for (const host of ['192.0.2.7', '[2001:db8::7]:4170', 'potting-shed', 'POTTING-SHED.local:80']) {
      expect([host, await status(host)]).toEqual([host, 503]);
    }
    for (const host of ['192.0.2.8', 'shed.local', 'potting-shed.plants.example', '@']) {
      expect([host, await status(host)]).toEqual([host, 403]);
    }
  });

  it('sends headers that do their work over plain http', async () => {
    const { url } = await openBench({ host: '0.0.0.0', machine: MACHINE });
    const { headers } = await rawRequest(url, '/', { headers: { host: '192.0.2.7' } });
    expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(headers['x-content-type-options']).toBe('nosniff');
  });
});
