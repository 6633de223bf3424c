import { execFileSync } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { addDays, day } from '../../core/day/day.ts';
import { localDay } from '../../server/local-day.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg } from './fixtures/photos.ts';

/** From 14 hours ahead of UTC to 11 behind it, with half hours and with days of 23 and 25 hours among them. */
const ZONES = [
  'Pacific/Kiritimati',
  'Asia/Kolkata',
  'Europe/Berlin',
  'UTC',
  'America/St_Johns',
  'Pacific/Pago_Pago',
] as const;
const SHOW_DAY = '2026-07-04';
const STOP_DAY = '2026-02-03';
/** A plain day, and days on which clocks change in Berlin and in St John's, to both sides. */
const MIDNIGHTS = [
  '2026-06-01',
  '2026-03-08',
  '2026-03-29',
  '2026-03-30',
  '2026-10-25',
  '2026-11-01',
  '2026-11-02',
];
const TODAYS = ['2026-05-31', '2026-06-01', '2026-03-29', '2026-10-26'];

/** A data home with a plant of seven sittings, one of them late at night, a stop, a note and a show. */
async function filledHome(): Promise<string> {
  const homePath = temporaryFolder();
  const bench = await openBench({ homePath });
  const plant = await bench.addPlant({ rimMm: 130 });
  const nights = [
    '2026:03:08 02:30:00',
    '2026:03:28 23:58:00',
    '2026:03:29 00:02:00',
    '2026:04:12 23:59:59',
    '2026:05:03 00:00:00',
  ];
  const files = [
    ...(await Promise.all(
      nights.map(async (time, k) => ({ name: `${k}.jpg`, bytes: await cameraJpeg(time, { seed: k + 1 }) })),
    )),
  ];
  await bench.upload(plant.id, files);
  for (const [k, on] of ['2026-05-10', '2026-05-17'].entries()) {
    await bench.upload(plant.id, [{ name: `later ${k}.jpg`, bytes: await plantJpeg(20 + k) }], { day: on });
  }
  await bench.send('POST', `/api/plants/${plant.id}/stops`, { day: STOP_DAY, depth: 'tip', note: '' });
  await bench.send('POST', `/api/plants/${plant.id}/notes`, { day: '2026-05-03', kind: 'fed', text: '' });
  const show = (await bench.send('POST', '/api/shows', { name: 'Hall', day: SHOW_DAY })).body;
  const entered = await bench.send('PUT', `/api/plants/${plant.id}/entries/${show.id}`, {});
  expect(entered.status).toBeLessThan(300);
  await bench.services.queue.whenIdle();
  // The calendar's key is drawn when it is first asked for.
  await bench.send('GET', '/api/calendar');
  bench.services.queue.close();
  bench.services.db.pragma('wal_checkpoint(TRUNCATE)');
  return homePath;
}

interface Said {
  readonly pages: readonly { plants: readonly { page: { sittings: readonly { day: string }[] } }[] }[];
  readonly clocks: readonly (readonly [string, string, string, string])[][];
}

function saidIn(zone: string, home: string): Said {
  const copy = join(temporaryFolder(), 'home');
  cpSync(home, copy, { recursive: true });
  const printed = execFileSync(
    process.execPath,
    [
      '--import',
      'tsx',
      'tests/server/fixtures/answers-in-zone.ts',
      copy,
      TODAYS.join(),
      MIDNIGHTS.join(),
      SHOW_DAY,
      STOP_DAY,
    ],
    {
      cwd: join(import.meta.dirname, '../..'),
      env: { ...process.env, TZ: zone },
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    },
  );
  return JSON.parse(printed) as Said;
}

let said: Map<string, Said> | null = null;

/** What each zone says of one home; asked for once. */
async function saidEverywhere(): Promise<Map<string, Said>> {
  if (said === null) {
    const home = await filledHome();
    said = new Map(ZONES.map((zone) => [zone, saidIn(zone, home)]));
  }
  return said;
}

/** Every number and word in a value, by its path, so that a difference is named. */
function leaves(value: unknown, path = ''): Map<string, unknown> {
  if (typeof value !== 'object' || value === null) return new Map([[path, value]]);
  return new Map(Object.entries(value).flatMap(([key, one]) => [...leaves(one, `${path}/${key}`)]));
}

describe('days counted', () => {
  it('are the same in six zones: sittings, weeks since the stop, days to the show, every page', async () => {
    const all = [...(await saidEverywhere()).values()];
    const first = leaves(all[0]?.pages);
    expect(first.size).toBeGreaterThan(500);
    for (const [k, zone] of ZONES.entries()) {
      const other = leaves(all[k]?.pages);
      const differs = [...first]
        .filter(([path, value]) => other.get(path) !== value && !path.endsWith('/createdAt'))
        .map(([path, value]) => `${path}: ${value} / ${other.get(path)}`);
      expect([zone, other.size, differs]).toEqual([zone, first.size, []]);
    }
    const sittings = all[0]?.pages[0]?.plants[0]?.page.sittings.map((sitting) => sitting.day);
    expect(sittings).toEqual([
      '2026-05-17',
      '2026-05-10',
      '2026-05-03',
      '2026-04-12',
      '2026-03-29',
      '2026-03-28',
      '2026-03-08',
    ]);
    console.log(
      `days: ${first.size} values of bench, plant, season, calendar, year and shows on ${TODAYS.length} days, equal in ${ZONES.length} zones`,
    );
  }, 120_000);

  it('change at midnight and at no other minute around it, in six zones, also on days of 23 and 25 hours', async () => {
    let looked = 0;
    for (const [zone, { clocks }] of await saidEverywhere()) {
      for (const [k, midnight] of MIDNIGHTS.entries()) {
        const after = day(midnight);
        const before = addDays(after, -1);
        for (const [n, [server, page, toShow, sinceStop]] of (clocks[k] ?? []).entries()) {
          const today = n < 5 ? before : after;
          expect([zone, midnight, n - 5, server, page]).toEqual([zone, midnight, n - 5, today, today]);
          // The same words whatever the minute: reckoned once from the day alone.
          const [, , wantedShow, wantedStop] = clocks[k]?.[n < 5 ? 0 : 10] ?? [];
          expect([toShow, sinceStop]).toEqual([wantedShow, wantedStop]);
          looked += 1;
        }
      }
    }
    console.log(
      `midnight: ${looked} minutes looked at, ${ZONES.length} zones, ${MIDNIGHTS.length} nights, 0 a day off`,
    );
  }, 120_000);
});

describe('a photo without a camera day', () => {
  it.each([-5, -1, 0, 1, 5])(
    'that comes in %i minutes from midnight stands at the grower’s day',
    async (minutes) => {
      // Only the clock is false: what waits, waits by the true one.
      vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 5, 1, 0, minutes, 0) });
      try {
        const bench = await openBench({ today: () => localDay(new Date()) });
        const plant = await bench.addPlant();
        const show = (await bench.send('POST', '/api/shows', { name: 'Hall', day: SHOW_DAY })).body;
        await bench.send('PUT', `/api/plants/${plant.id}/entries/${show.id}`, {});
        await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
        await bench.services.queue.whenIdle();
        const { body } = await bench.send('GET', `/api/plants/${plant.id}`);
        expect(body.sittings.map((sitting: { day: string }) => sitting.day)).toEqual([
          minutes < 0 ? '2026-05-31' : '2026-06-01',
        ]);
      } finally {
        vi.useRealTimers();
      }
    },
  );
});
