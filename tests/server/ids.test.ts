import { randomUUID } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { calendarKey } from '../../server/store/calendar-key.ts';
import { doorKey } from '../../server/store/door-key.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

/** RFC 9562, 5.4: version 4, 122 random bits. */
const RANDOM_UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const UUID_BITS = 122;

/** A bench with one of everything that has an id. */
async function benchOfEverything() {
  const bench = await openBench();
  const made = async (path: string, form: object) => {
    const { status, body } = await bench.send('POST', path, form);
    if (status >= 300) throw new Error(`${path}: ${JSON.stringify(body)}`);
    return body;
  };
  const stand = await made('/api/stands', { name: 'Potting bench', sinceDay: '2026-01-01' });
  const plant = await bench.addPlant({ standId: stand.id });
  for (const k of [1, 2]) {
    await bench.upload(plant.id, [{ name: `${k}.jpg`, bytes: await plantJpeg(k) }], { day: `2026-05-0${k}` });
  }
  await made(`/api/plants/${plant.id}/notes`, { day: '2026-05-03', text: 'dry' });
  await made(`/api/plants/${plant.id}/stops`, { day: '2026-02-03', depth: 'tip' });
  await made(`/api/plants/${plant.id}/turns`, { day: '2026-05-03', facesLightDeg: 90 });
  await made('/api/shows', { name: 'Hall', day: '2026-07-04', classes: [{ name: 'Regal, 15 cm pot' }] });
  await made('/api/season-notes', { fromDay: '2026-01-01', toDay: '2026-02-01', text: 'dark' });
  await bench.services.queue.whenIdle();
  return { ...bench, plantId: plant.id };
}

describe('what a thing is called', () => {
  it('cannot be guessed: plants, stands, sittings, photos, stops, notes, turns and shows have 122 random bits', async () => {
    const { services } = await benchOfEverything();
    const tables = [
      'plants',
      'stands',
      'sittings',
      'views',
      'stops',
      'notes',
      'turns',
      'shows',
      'season_notes',
    ];
    for (const table of tables) {
      const ids = services.db.prepare(`SELECT id FROM ${table}`).pluck().all() as string[];
      expect(ids.length, table).toBeGreaterThan(0);
      for (const id of ids) expect(id, table).toMatch(RANDOM_UUID);
    }
    const [classes] = services.db.prepare('SELECT classes FROM shows').pluck().all() as string[];
    expect(JSON.parse(classes ?? '[]')[0].id).toMatch(RANDOM_UUID);
    // No digit of an id comes oftener than chance has it: each bit of 4000 is set in half of them, within six standard errors.
    const ids = Array.from({ length: 4000 }, () => BigInt(`0x${randomUUID().replaceAll('-', '')}`));
    let randomBits = 0;
    for (let bit = 0n; bit < 128n; bit++) {
      const set = ids.filter((id) => (id >> bit) & 1n).length;
      if (Math.abs(set - 2000) < 6 * Math.sqrt(1000)) randomBits += 1;
    }
    expect(randomBits).toBe(UUID_BITS);
    console.log(`ids: ${randomBits} random bits in each of ${tables.length + 1} kinds, by crypto.randomUUID`);
  });

  it('is new for each store: keys of calendar and door', async () => {
    const stores = await Promise.all([1, 2].map(() => openBench({ homePath: temporaryFolder() })));
    const keys = stores.flatMap(({ services: { db } }) => [calendarKey(db), doorKey(db)]);
    expect(new Set(keys).size).toBe(4);
    const bits = keys.map((key) => 8 * Buffer.from(key, 'base64url').length);
    for (const count of bits) expect(count).toBeGreaterThanOrEqual(96);
    console.log(`keys: calendar ${bits[0]} bits, door ${bits[1]} bits, by crypto.randomBytes`);
  });

  it('tells nobody how many there are: no address that is given out counts anything', async () => {
    const bench = await benchOfEverything();
    const answers = await Promise.all(
      [
        '/api/bench',
        `/api/plants/${bench.plantId}`,
        `/api/plants/${bench.plantId}/year`,
        '/api/stands',
        '/api/calendar',
        '/api/shows',
      ].map(async (path) => JSON.stringify((await bench.send('GET', path)).body)),
    );
    const given = [...new Set(answers.join('\n').match(/\/api\/[^"\\ ]+/g))];
    expect(given.length).toBeGreaterThan(3);
    const counting = given.filter((address) =>
      address
        .split(/[/?&]/)
        .map((part) => part.split('=').at(-1) ?? '')
        .some((part) => /^\d{1,12}$/.test(part)),
    );
    expect(counting).toEqual([]);
    console.log(`addresses given out: ${given.length} kinds looked at, 0 with a count in them`);
  });
});
