import { request } from 'node:http';
import { describe, expect, it } from 'vitest';
import { readEnvironment } from '../../../server/environment.ts';
import { CODE_LIFE_MS, createCodeDesk } from '../../../server/pairing/code-desk.ts';
import { addressesFor, type Machine, THIS_MACHINE } from '../../../server/pairing/known-names.ts';
import { calendarKey } from '../../../server/store/calendar-key.ts';
import { openBench, type TestBench } from '../fixtures/open-bench.ts';
import { plantJpeg } from '../fixtures/photos.ts';
import { rawRequest } from './raw-request.ts';

const MACHINE: Machine = { hostName: 'potting-shed', addresses: () => ['192.0.2.7'] };

const openNetwork = () => openBench({ host: '0.0.0.0', machine: MACHINE });

/** A phone in the greenhouse: it comes under the machine's network name, with what it carries. */
function phoneOf({ url }: TestBench) {
  const host = `192.0.2.7:${new URL(url).port}`;
  let cookie = '';
  const ask = async (method: string, path: string, json?: unknown) => {
    const answer = await rawRequest(url, path, {
      method,
      headers: { host, origin: `http://${host}`, ...(cookie ? { cookie } : {}) },
      json,
    });
    const set = answer.headers['set-cookie']?.[0];
    if (set) cookie = String(set).split(';')[0] ?? '';
    return { ...answer, set: set ?? null };
  };
  return {
    ask,
    enter: (code: string) => ask('POST', '/api/phones', { code, name: 'Green phone' }),
    carries: () => cookie,
    carry: (other: string) => {
      cookie = other;
    },
  };
}

const codeAt = async (bench: TestBench): Promise<string> =>
  (await bench.send('POST', '/api/phones/code')).body.code;

describe('a phone on the home network', () => {
  it('gets the screens, and nothing else, until it is let in', async () => {
    const bench = await openNetwork();
    const plant = await bench.addPlant();
    const sent = await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    const viewId = sent.body.photos[0].view.id;
    const phone = phoneOf(bench);
    const closed = ['bench', `plants/${plant.id}`, `views/${viewId}/picture`, 'events', 'openapi.json', 'x'];
    for (const path of closed)
      expect([path, (await phone.ask('GET', `/api/${path}`)).status]).toEqual([path, 401]);
    expect((await phone.ask('POST', '/api/sample/put-away')).status).toBe(401);
    expect(JSON.parse((await phone.ask('GET', '/api/door')).body)).toEqual({
      at: 'outside',
      wasLetOut: false,
    });
    expect((await phone.ask('GET', '/')).status).toBe(503);
  });

  it('is let in once by the code of the desk, and carries a key that scripts cannot read', async () => {
    const bench = await openNetwork();
    const phone = phoneOf(bench);
    const code = await codeAt(bench);
    const answer = await phone.enter(`${code.slice(0, 3)} ${code.slice(3)}`);
    expect(answer.status).toBe(204);
    expect(answer.set).toMatch(/HttpOnly/);
    expect(answer.set).toMatch(/SameSite=Strict/);
    expect(answer.set).not.toMatch(/Secure/);
    expect((await phone.ask('GET', '/api/bench')).status).toBe(200);
    expect((await phoneOf(bench).enter(code)).status).toBe(422);
    const { body } = await bench.send('GET', '/api/phones');
    expect(body.phones).toMatchObject([{ name: 'Green phone' }]);
    expect(body.addresses).toEqual([
      `http://192.0.2.7:${new URL(bench.url).port}`,
      `http://potting-shed.local:${new URL(bench.url).port}`,
    ]);
  });

  it('cannot make up a key, nor change the one it has', async () => {
    const bench = await openNetwork();
    const phone = phoneOf(bench);
    await phone.enter(await codeAt(bench));
    const good = phone.carries();
    const { body } = await bench.send('GET', '/api/phones');
    const id = body.phones[0].id;
    for (const forged of [
      `rondure-phone=${id}`,
      `rondure-phone=${id}.AAAA`,
      `${good}x`,
      good.replace(/.$/, ''),
    ]) {
      phone.carry(forged);
      expect((await phone.ask('GET', '/api/bench')).status).toBe(401);
    }
    phone.carry(good);
    expect((await phone.ask('GET', '/api/bench')).status).toBe(200);
  });

  it('neither shows codes nor lets others in or out', async () => {
    const bench = await openNetwork();
    const phone = phoneOf(bench);
    await phone.enter(await codeAt(bench));
    const { body } = await bench.send('GET', '/api/phones');
    for (const [method, path] of [
      ['GET', '/api/phones'],
      ['POST', '/api/phones/code'],
      ['DELETE', `/api/phones/${body.phones[0].id}`],
    ] as const) {
      expect((await phone.ask(method, path)).status).toBe(403);
    }
  });

  it('is not taken for the desk when a proxy on the machine passes it on', async () => {
    const bench = await openNetwork();
    for (const header of ['x-forwarded-for', 'forwarded', 'via', 'x-real-ip']) {
      const answer = await rawRequest(bench.url, '/api/bench', { headers: { [header]: '192.0.2.9' } });
      expect([header, answer.status]).toEqual([header, 401]);
    }
  });

  it('that is let out loses its open line at once, is told so, and can be taken back in', async () => {
    const bench = await openNetwork();
    const phone = phoneOf(bench);
    await phone.enter(await codeAt(bench));
    const { id } = (await bench.send('GET', '/api/phones')).body.phones[0];
    const line = await new Promise<{ ended: Promise<void> }>((resolve, reject) => {
      request(
        `${bench.url}/api/events`,
        { headers: { host: '192.0.2.7', cookie: phone.carries() } },
        (response) => {
          response.on('data', () => {});
          resolve({ ended: new Promise((end) => response.on('close', end)) });
        },
      )
        .on('error', reject)
        .end();
    });
    expect((await bench.send('DELETE', `/api/phones/${id}`)).status).toBe(204);
    await line.ended;
    const refused = await phone.ask('GET', '/api/bench');
    expect([refused.status, JSON.parse(refused.body).detail]).toEqual([
      401,
      'This device was let out at the desk. Enter a new code to come in again.',
    ]);
    expect(JSON.parse((await phone.ask('GET', '/api/door')).body)).toEqual({
      at: 'outside',
      wasLetOut: true,
    });
    expect((await bench.send('GET', '/api/phones')).body.phones).toEqual([]);
    await bench.send('POST', `/api/phones/${id}/restore`);
    expect((await phone.ask('GET', '/api/bench')).status).toBe(200);
  });

  it('leaves the calendar open to whoever has its address', async () => {
    const bench = await openNetwork();
    const key = calendarKey(bench.services.db);
    const phone = phoneOf(bench);
    expect((await phone.ask('GET', `/api/calendar/${key}.ics`)).status).toBe(200);
    expect((await phone.ask('GET', `/api/calendar/${key.slice(1)}.ics`)).status).toBe(404);
    expect((await phone.ask('GET', '/api/calendar')).status).toBe(401);
  });
});

describe('the desk of codes', () => {
  function deskAt() {
    const clock = { ms: 1_000_000 };
    return { clock, desk: createCodeDesk(() => clock.ms) };
  }
  const wrongFor = (code: string) => String((Number(code) + 1) % 1_000_000).padStart(6, '0');

  it('lets a code lapse after ten minutes and when a newer one is shown', () => {
    const { clock, desk } = deskAt();
    const first = desk.show();
    const second = desk.show();
    if (first.code !== second.code)
      expect(desk.take(first.code, 'a')).toEqual({ ok: false, reason: 'wrong' });
    clock.ms += CODE_LIFE_MS;
    expect(desk.take(second.code, 'b')).toEqual({ ok: false, reason: 'wrong' });
  });

  it('takes nothing while no code is shown', () => {
    const { desk } = deskAt();
    expect(desk.take('', 'a').ok).toBe(false);
    expect(desk.take('none', 'b').ok).toBe(false);
  });

  it('makes one address wait longer after each wrong code, even with the right one', () => {
    const { clock, desk } = deskAt();
    const { code } = desk.show();
    for (let slip = 0; slip < 4; slip += 1) desk.take(wrongFor(code), 'a');
    expect(desk.take(code, 'a')).toEqual({ ok: false, reason: 'wait', waitMs: 2_000 });
    clock.ms += 2_000;
    desk.take(wrongFor(code), 'a');
    expect(desk.take(code, 'a')).toEqual({ ok: false, reason: 'wait', waitMs: 4_000 });
    expect(desk.take(code, 'another phone').ok).toBe(true);
  });

  it('leaves whoever changes addresses about twenty tries in the life of a code', () => {
    const { clock, desk } = deskAt();
    const { code, untilMs } = desk.show();
    let looked = 0;
    for (let from = 0; clock.ms < untilMs; from += 1) {
      const outcome = desk.take(wrongFor(code), `address ${from}`);
      if (!outcome.ok && outcome.reason === 'wait') clock.ms += outcome.waitMs;
      else looked += 1;
    }
    console.log(`wrong codes looked at in ten minutes: ${looked}, chance ${looked / 1_000_000}`);
    expect(looked).toBeLessThan(30);
  });
});

describe('the way onto the network', () => {
  it('is asked for by a word or by HOST, and is closed otherwise', () => {
    expect(readEnvironment({}).HOST).toBe('127.0.0.1');
    expect(readEnvironment({}, ['--network']).HOST).toBe('0.0.0.0');
    expect(readEnvironment({ HOST: '192.0.2.7' }, ['--network']).HOST).toBe('192.0.2.7');
    expect(() => readEnvironment({}, ['--netwrok'])).toThrow('"npm start -- --network" the home network too');
  });

  const address = THIS_MACHINE.addresses().find((one) => !one.includes(':'));
  it.runIf(address !== undefined)(
    'bound to one address of the network, keeps the desk on loopback beside it',
    async () => {
      const bench = await openBench({ host: address ?? '' });
      expect(new URL(bench.url).hostname).toBe('127.0.0.1');
      const there = `http://${address}:${new URL(bench.url).port}`;
      expect((await rawRequest(bench.url, '/api/bench')).status).toBe(200);
      expect((await rawRequest(there, '/api/bench')).status).toBe(401);
    },
  );

  it('names the addresses to open on a phone', () => {
    expect(addressesFor(4170, '127.0.0.1', MACHINE)).toEqual([]);
    expect(addressesFor(4170, '0.0.0.0', MACHINE)).toEqual([
      'http://192.0.2.7:4170',
      'http://potting-shed.local:4170',
    ]);
  });
});
