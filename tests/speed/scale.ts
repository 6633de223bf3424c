// How fast the pages answer over a store of many years: `npm run speed-scale -- [PLANTS YEARS VIEWS]`, 200 10 4 when left out.
// A measurement, not a test: what is slow depends on the machine. Asked for: 50 ms at 95 % a page, started within 2 s.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { statSync } from 'node:fs';
import { get } from 'node:http';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout } from 'node:timers/promises';
import pino from 'pino';
import { openHouse } from '../../server/house.ts';
import type { Bench } from '../../server/schemas/pages.ts';
import { serve } from '../../server/serve.ts';
import type { Database } from '../../server/store/database.ts';
import { MADE_TODAY, madeStore, type StoreSize } from './made-store.ts';

const RUNS = 20;
/** As the screen of a plant asks. */
const WHOLE_SITTINGS = 4;
const MAIN = join(import.meta.dirname, '../../server/main.ts');

const [plants = 200, years = 10, views = 4] = process.argv.slice(2).map(Number);
const size: StoreSize = { plants, years, views };

/** Seconds from starting the process to its line that says where it is. */
async function startSeconds(home: string): Promise<number> {
  const begun = performance.now();
  const app = spawn(process.execPath, ['--import', 'tsx', MAIN], {
    env: { ...process.env, RONDURE_HOME: home, PORT: '0', RONDURE_SAMPLES: 'off' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await once(app.stdout, 'data');
  const seconds = (performance.now() - begun) / 1000;
  app.kill('SIGTERM');
  await once(app, 'exit');
  return seconds;
}

interface Answer {
  readonly ms: number;
  /** Of all threads, asking included. */
  readonly processorMs: number;
  /** As sent, packed. */
  readonly bytes: number;
}

/** One answer as a browser asks for it, packed, to its last byte. */
function answerOf(url: string): Promise<Answer> {
  const begun = performance.now();
  const used = process.cpuUsage();
  return new Promise((resolve, reject) => {
    get(url, { headers: { 'accept-encoding': 'gzip' } }, (response) => {
      let bytes = 0;
      response.on('data', (part: Buffer) => {
        bytes += part.length;
      });
      response.on('end', () => {
        if (response.statusCode !== 200) reject(new Error(`${url} answered ${response.statusCode}`));
        else {
          const { user, system } = process.cpuUsage(used);
          resolve({ ms: performance.now() - begun, processorMs: (user + system) / 1000, bytes });
        }
      });
    }).on('error', reject);
  });
}

/** Notes every statement that is prepared, under the page being asked for. */
function listening(db: Database): { page: string; readonly statements: Map<string, Set<string>> } {
  const heard = { page: '', statements: new Map<string, Set<string>>() };
  const prepare = db.prepare.bind(db);
  db.prepare = ((sql: string) => {
    const pages = heard.statements.get(sql) ?? new Set();
    if (heard.page !== '') heard.statements.set(sql, pages.add(heard.page));
    return prepare(sql);
  }) as typeof db.prepare;
  return heard;
}

/** The steps of a statement's plan that read a whole table from end to end. */
function scansOf(db: Database, sql: string): string[] {
  const values = Array.from({ length: (sql.match(/\?/g) ?? []).length }, () => null);
  const steps = db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...values) as { detail: string }[];
  return steps
    .map(({ detail }) => detail)
    .filter(
      (detail) => detail.startsWith('SCAN') && !/SCAN (\(|json_each|now|ordered|CONSTANT)/.test(detail),
    );
}

/** The bench asked for again and again while no fit is kept, as after an upgrade, until every bloom is known. */
async function firstLook(url: string, db: Database): Promise<void> {
  db.exec('DELETE FROM kept_fits');
  const loop = monitorEventLoopDelay({ resolution: 2 });
  loop.enable();
  const begun = performance.now();
  const times: number[] = [];
  let most = 0;
  for (let underWay = Number.POSITIVE_INFINITY; underWay > 0; ) {
    const asked = performance.now();
    const { plants } = (await (await fetch(`${url}/api/bench`)).json()) as Bench;
    times.push(performance.now() - asked);
    underWay = plants.filter(({ isBloomUnderWay }) => isBloomUnderWay).length;
    most = Math.max(most, underWay);
    await setTimeout(500);
  }
  loop.disable();
  const [first = 0, ...later] = times;
  later.sort((one, other) => one - other);
  const at = (share: number) => later[Math.ceil(share * later.length) - 1]?.toFixed(0);
  console.log(
    `\nno fit kept: the bench's first look ${first.toFixed(0)} ms with ${most} blooms under way, all known after ${((performance.now() - begun) / 1000).toFixed(1)} s; the bench meanwhile, asked ${later.length} times: ${at(0.5)} / ${at(0.95)} ms; the main thread held up for ${(loop.max / 1e6).toFixed(0)} ms at most`,
  );
}

const begun = performance.now();
const home = await madeStore(size);
const madeSeconds = (performance.now() - begun) / 1000;
const megabytes = statSync(join(home, 'rondure.sqlite')).size / 1e6;
console.log(
  `${plants} plants, ${years} years, a sitting a week, ${views} views: ${plants * years * 52 * views} views, database ${megabytes.toFixed(0)} MB (there after ${madeSeconds.toFixed(1)} s); ${cpus()[0]?.model}, ${cpus().length} cores, Node ${process.version}`,
);
console.log(
  `start: ${(await startSeconds(home)).toFixed(2)} s, a second time ${(await startSeconds(home)).toFixed(2)} s`,
);

const house = openHouse(home, pino({ level: 'silent' }), { today: () => MADE_TODAY });
const heard = listening(house.services.db);
const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: home });
try {
  const [plant] = house.services.db.prepare(`SELECT id FROM plants WHERE name = 'Plant 3'`).all() as {
    id: string;
  }[];
  const id = plant?.id;
  const pages = [
    ['bench', '/api/bench'],
    ['plant page', `/api/plants/${id}?sittings=${WHOLE_SITTINGS}`],
    ['season', `/api/plants/${id}/season`],
    ['calendar', '/api/calendar'],
    ['work', '/api/work'],
    ['year', `/api/plants/${id}/year`],
    ['shows', '/api/shows'],
  ] as const;
  heard.page = 'bench';
  await firstLook(serving.url, house.services.db);
  console.log('\npage               first    median      95 % processor, 95 %   packed');
  for (const [name, path] of pages) {
    heard.page = name;
    const first = await answerOf(serving.url + path);
    const answers: Answer[] = [];
    // A page that takes long is not asked twenty times.
    while (answers.length < RUNS && (answers[0]?.ms ?? 0) < 5000)
      answers.push(await answerOf(serving.url + path));
    const runs = answers.length;
    const ms = (value: number) => `${value.toFixed(0)} ms`.padStart(10);
    const sorted = (of: (answer: Answer) => number) => answers.map(of).sort((a, b) => a - b);
    const at = (values: readonly number[], share: number) => values[Math.ceil(share * runs) - 1] as number;
    const times = sorted((answer) => answer.ms);
    const processor = sorted((answer) => answer.processorMs);
    console.log(
      `${name.padEnd(14)}${ms(first.ms)}${ms(at(times, 0.5))}${ms(at(times, 0.95))}${ms(at(processor, 0.5))}${ms(at(processor, 0.95))}${`${(first.bytes / 1000).toFixed(0)} kB`.padStart(9)}`,
    );
  }
  heard.page = '';
  // Undone each time, so that the store can be used again: what is undone has counted all the same.
  const { db } = house.services;
  const touch = db.prepare('UPDATE plants SET name = name WHERE id = ?');
  const undone = db.transaction((plantId: string) => {
    touch.run(plantId);
    throw new Error('undone');
  });
  const ids = db.prepare('SELECT id FROM plants ORDER BY name').pluck().all() as string[];
  for (const [name, path] of pages.filter(([, one]) => !one.includes('/plants/'))) {
    const answers: Answer[] = [];
    for (let k = 0; k < RUNS; k++) {
      try {
        undone(ids[k % ids.length] as string);
      } catch {
        answers.push(await answerOf(serving.url + path));
      }
    }
    const at = (share: number, of: (answer: Answer) => number) => {
      const sorted = answers.map(of).sort((a, b) => a - b);
      return `${sorted[Math.ceil(share * RUNS) - 1]?.toFixed(0)} ms`.padStart(10);
    };
    const figures = [
      at(0.5, ({ ms }) => ms),
      at(0.95, ({ ms }) => ms),
      at(0.5, ({ processorMs }) => processorMs),
    ];
    console.log(`${name}, one plant written of just before (last: processor)`.padEnd(60) + figures.join(''));
  }
  console.log(
    `\nmemory: ${(process.memoryUsage.rss() / 1e6).toFixed(0)} MB now, ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB at most`,
  );
  console.log('\nstatements of these pages that read a whole table:');
  for (const [sql, on] of heard.statements) {
    const scans = scansOf(house.services.db, sql);
    if (scans.length > 0) {
      console.log(
        `  ${[...on].join(', ')}: ${scans.join('; ')}\n    ${sql.replaceAll(/\s+/g, ' ').slice(0, 160)}`,
      );
    }
  }
} finally {
  await serving.close();
  await house.close();
}
