import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shareOpen } from '../../core/bloom/bloom-form.ts';
import { addDays, day } from '../../core/day/day.ts';
import type { NormalLeaf } from '../../core/foliage/normal-leaf.ts';
import type { PhotoReport } from '../../core/report.ts';
import { OPERATIONS } from '../../server/openapi/operations.ts';
import type { PlantPage } from '../../server/schemas/pages.ts';
import { DATABASE_FILE } from '../../server/store/database.ts';
import { answersAfresh, answersServed } from './fixtures/answers-afresh.ts';
import { longStem, reportWithStems } from './fixtures/long-stems.ts';
import { openBench, sampleMeasurement, sampleReport, type TestBench } from './fixtures/open-bench.ts';
import { inFlower } from './fixtures/photographed-plant.ts';
import { plantJpeg } from './fixtures/photos.ts';
import { turnedReport } from './fixtures/turned-report.ts';

const FIRST = day('2026-03-30');
const TODAY = addDays(FIRST, 63);
const FORM = { kind: 'logistic', halfDays: 40, riseDays: 16, lastsDays: 21, fallDays: 20 } as const;
const WEEKS = Array.from({ length: 9 }, (_, week) => 7 * week);

const RIM: PhotoReport['axis'] = {
  xPx: 320,
  rimLeftPx: [277, 290],
  rimRightPx: [363, 290],
  rimEllipse: null,
};
/** Of a photo whose white is known, so that it can teach what is normal. */
const LEAF: NormalLeaf = {
  photos: 1,
  from: 'backdrop',
  leafColour: { l: 44, a: -20, b: 25 },
  hueShares: Array.from({ length: 210 }, (_, hue) => (hue === 100 ? 1 : 0)),
};

/** A bench with all that answers rest on: a plant in bloom that is entered for a show, its sister, a sample, a stand. */
async function fullBench() {
  let today: string = TODAY;
  const reports = new Map<string, Partial<PhotoReport>>();
  const bench = await openBench({
    today: () => today,
    measure: async (task) => ({
      ...sampleMeasurement(task),
      report: sampleReport(task.photoName, reports.get(task.photoName) ?? {}),
      leafLook: LEAF,
    }),
    join: async () => turnedReport(),
  });
  let seed = 0;
  const send = async (method: string, path: string, body?: unknown) => {
    const answer = await bench.send(method, `/api${path}`, body);
    if (answer.status >= 300)
      throw new Error(`${method} ${path}: ${answer.status} ${JSON.stringify(answer.body)}`);
    return answer.body;
  };
  const photograph = async (plantId: string, on: string, facts: Partial<PhotoReport>, turnDeg?: number) => {
    const name = `${++seed}.jpg`;
    reports.set(name, { axis: RIM, ...facts });
    const turned = turnDeg === undefined ? {} : { turnDeg: String(turnDeg) };
    const { body } = await bench.upload(plantId, [{ name, bytes: await plantJpeg(seed) }], {
      day: on,
      ...turned,
    });
    return body.photos[0].view.id as string;
  };
  const picture = async () => {
    const form = new FormData();
    form.append('photo', new Blob([new Uint8Array(await plantJpeg(++seed, { size: 0.05 }))]), 'empty.jpg');
    return form;
  };
  const stand = await send('POST', '/stands', { name: 'Potting bench', lightSide: 'left' });
  const kind = 'fuchsia-single';
  const showDay = addDays(FIRST, 90);
  const one = (await bench.addPlant({ name: 'Kettle Moth', kind, showDay, standId: stand.id })).id;
  const other = (await bench.addPlant({ name: 'Alder Bell', kind, showDay })).id;
  const sample = (await bench.addPlant({ name: 'Sample', kind, showDay })).id;
  bench.services.db.prepare('UPDATE plants SET sample = 1 WHERE id = ?').run(sample);
  const [show] = (await send('GET', '/shows')).shows;
  for (const days of WEEKS) {
    await photograph(one, addDays(FIRST, days), inFlower(0.4 * shareOpen(FORM, days)));
    await photograph(other, addDays(FIRST, days), inFlower(0));
  }
  const stems = reportWithStems([longStem(2, 40), longStem(9, 25)]);
  const stemmed = await photograph(other, addDays(TODAY, -1), stems, 0);
  await photograph(other, addDays(TODAY, -1), stems, 90);
  await bench.services.queue.whenIdle();
  const page = async (id: string) => (await send('GET', `/plants/${id}`)) as PlantPage;
  return {
    bench,
    send,
    photograph,
    picture,
    page,
    stand: stand.id as string,
    one,
    other,
    sample,
    show: show.show.id as string,
    stemmed,
    newestView: async (id: string) => (await page(id)).sittings[0]?.views[0]?.id as string,
    turnDayTo: (on: string) => {
      today = on;
    },
    /** Ids that a step leaves to those after it. */
    ids: new Map<string, string>(),
  };
}
type Full = Awaited<ReturnType<typeof fullBench>>;

/** Adds a thing, and keeps its id under a name for the steps after it. */
const adds = (what: string, path: (full: Full) => string, body: object) => async (full: Full) => {
  full.ids.set(what, (await full.send('POST', path(full), body)).id);
};
const onIt = (method: string, what: string, path: string, body?: object) => (full: Full) =>
  full.send(method, `${path.replace('ID', full.ids.get(what) ?? '')}`, body);

/** What is done with each address that changes something; they are done in this order, on one bench. */
const STEPS: Readonly<Record<string, (full: Full) => Promise<unknown>>> = {
  'post /plants': ({ send, show: _, ...full }) =>
    send('POST', '/plants', {
      name: 'Third',
      kind: 'regal',
      showDay: addDays(full.bench.services.today(), 80),
    }),
  'patch /plants/{id}': ({ send, one }) => send('PATCH', `/plants/${one}`, { variety: 'Slow Lamp' }),
  'post /plants/{id}/photos': ({ photograph, one }) => photograph(one, TODAY, inFlower(0.38)),
  'put /plants/{id}/empty-photo': async ({ send, other, picture }) =>
    send('PUT', `/plants/${other}/empty-photo`, await picture()),
  'delete /plants/{id}/empty-photo': ({ send, other }) => send('DELETE', `/plants/${other}/empty-photo`),
  'put /plants/{id}/healthy-days/{day}': ({ send, one }) =>
    send('PUT', `/plants/${one}/healthy-days/${FIRST}`, { healthy: true }),
  'post /plants/{id}/bloom-dates': async ({ send, page, one }) => {
    const { bloom } = await page(one);
    const offer = bloom?.state === 'told' ? bloom.offers[0] : undefined;
    if (offer === undefined) throw new Error('Expected a date to be offered');
    await send('POST', `/plants/${one}/bloom-dates`, { event: offer.event, day: offer.day, said: 'yes' });
  },
  'delete /plants/{id}/bloom-dates/{event}': ({ send, one, bench }) => {
    const event = bench.services.db.prepare('SELECT event FROM bloom_words').pluck().get();
    return send('DELETE', `/plants/${one}/bloom-dates/${event}`);
  },
  'post /stands': adds('stand', () => '/stands', { name: 'Windowsill', lightSide: 'right' }),
  'patch /stands/{id}': ({ send, stand }) => send('PATCH', `/stands/${stand}`, { lightSide: 'behind-plant' }),
  'post /stands/{id}/put-away': onIt('POST', 'stand', '/stands/ID/put-away'),
  'post /stands/{id}/bring-back': onIt('POST', 'stand', '/stands/ID/bring-back'),
  'put /stands/{id}/empty-photo': async ({ send, stand, picture }) =>
    send('PUT', `/stands/${stand}/empty-photo`, await picture()),
  'delete /stands/{id}/empty-photo': ({ send, stand }) => send('DELETE', `/stands/${stand}/empty-photo`),
  'patch /sittings/{id}': async ({ send, page, one }) =>
    send('PATCH', `/sittings/${(await page(one)).sittings[1]?.id}`, { leftOut: 'limp from drought' }),
  'patch /sittings/{id}/cuts/{cutId}': async ({ send, page, other }) => {
    const sitting = (await page(other)).sittings[0]?.id;
    const { cuts } = await send('GET', `/sittings/${sitting}/cut-list`);
    await send('PATCH', `/sittings/${sitting}/cuts/${cuts[0].id}`, { state: 'done' });
  },
  'patch /views/{id}': async ({ send, stemmed }) => send('PATCH', `/views/${stemmed}`, { turnDeg: 45 }),
  'delete /views/{id}': async ({ send, stemmed }) => send('DELETE', `/views/${stemmed}`),
  'post /views/{id}/restore': async ({ send, stemmed }) => send('POST', `/views/${stemmed}/restore`),
  'post /views/{id}/measure': async ({ send, stemmed }) => send('POST', `/views/${stemmed}/measure`),
  'put /views/{id}/strokes': async ({ send, newestView, one }) =>
    send('PUT', `/views/${await newestView(one)}/strokes`, {
      strokes: [{ kind: 'keep', widthPx: 24, pointsPx: [[100, 120]] }],
    }),
  'put /views/{id}/rim': async ({ send, newestView, one }) =>
    send('PUT', `/views/${await newestView(one)}/rim`, { rim: { leftPx: [40, 150], rightPx: [120, 152] } }),
  'post /views/{id}/warm': async ({ send, newestView, one }) =>
    send('POST', `/views/${await newestView(one)}/warm`),
  'put /views/{id}/accepted': async ({ send, newestView, one }) =>
    send('PUT', `/views/${await newestView(one)}/accepted`, { accepted: true }),
  'post /plants/{id}/stops': adds('stop', ({ one }) => `/plants/${one}/stops`, {
    day: addDays(FIRST, -30),
    depth: 'tip',
  }),
  'patch /stops/{id}': onIt('PATCH', 'stop', '/stops/ID', { day: addDays(FIRST, -20) }),
  'delete /stops/{id}': onIt('DELETE', 'stop', '/stops/ID'),
  'post /stops/{id}/restore': onIt('POST', 'stop', '/stops/ID/restore'),
  'post /plants/{id}/notes': adds('note', ({ one }) => `/plants/${one}/notes`, {
    day: addDays(FIRST, 46),
    kind: 'full-bloom',
    text: '',
  }),
  'patch /notes/{id}': onIt('PATCH', 'note', '/notes/ID', { day: addDays(FIRST, 44) }),
  'delete /notes/{id}': onIt('DELETE', 'note', '/notes/ID'),
  'post /notes/{id}/restore': onIt('POST', 'note', '/notes/ID/restore'),
  'post /plants/{id}/turns': adds('turn', ({ one }) => `/plants/${one}/turns`, {
    day: addDays(TODAY, -3),
    facesLightDeg: 90,
    note: '',
  }),
  'patch /turns/{id}': onIt('PATCH', 'turn', '/turns/ID', { facesLightDeg: 180 }),
  'delete /turns/{id}': onIt('DELETE', 'turn', '/turns/ID'),
  'post /turns/{id}/restore': onIt('POST', 'turn', '/turns/ID/restore'),
  'post /plants/{id}/films': ({ send, other }) => send('POST', `/plants/${other}/films`, { format: 'gif' }),
  'post /shows': adds('show', () => '/shows', {
    name: 'Hall',
    day: addDays(FIRST, 120),
    classes: [{ name: 'Pots', rules: '', maxPotMm: 100 }],
  }),
  'patch /shows/{id}': ({ send, show }) =>
    send('PATCH', `/shows/${show}`, { day: addDays(FIRST, 97), place: 'Elsewhere' }),
  'delete /shows/{id}': ({ send, show }) => send('DELETE', `/shows/${show}`),
  'post /shows/{id}/restore': ({ send, show }) => send('POST', `/shows/${show}/restore`),
  'put /plants/{id}/entries/{showId}': ({ send, one, ids }) =>
    send('PUT', `/plants/${one}/entries/${ids.get('show')}`, {}),
  'patch /plants/{id}/entries/{showId}': ({ send, one, ids }) =>
    send('PATCH', `/plants/${one}/entries/${ids.get('show')}`, { result: 'Second.' }),
  'delete /plants/{id}/entries/{showId}': ({ send, one, show }) =>
    send('DELETE', `/plants/${one}/entries/${show}`),
  'post /plants/{id}/own-work': adds('own', ({ one }) => `/plants/${one}/own-work`, {
    kind: 'feed',
    day: TODAY,
    everyDays: 5,
    text: 'Potash',
  }),
  'patch /own-work/{id}': onIt('PATCH', 'own', '/own-work/ID', { text: 'Seaweed' }),
  'delete /own-work/{id}': onIt('DELETE', 'own', '/own-work/ID'),
  'post /own-work/{id}/restore': onIt('POST', 'own', '/own-work/ID/restore'),
  'post /work/words': async ({ send }) => {
    const { work } = await send('GET', '/work');
    const { plantId, key } = work.find(({ state }: { state: string }) => state === 'due');
    await send('POST', '/work/words', { words: [{ plantId, word: { key, said: 'done', day: TODAY } }] });
  },
  'post /records': ({ send, one, other }) =>
    send('POST', '/records', {
      plantIds: [one, other],
      record: { type: 'note', kind: 'turned', day: TODAY, text: 'Both.' },
    }),
  'post /season-notes': adds('season', () => '/season-notes', {
    plantId: null,
    fromDay: FIRST,
    toDay: TODAY,
    text: 'A cold dark spring',
    setsAside: true,
  }),
  'put /season-notes/{id}': ({ send, ids, one }) =>
    send('PUT', `/season-notes/${ids.get('season')}`, {
      plantId: one,
      fromDay: FIRST,
      toDay: TODAY,
      text: 'A warm one',
      setsAside: true,
    }),
  'delete /season-notes/{id}': onIt('DELETE', 'season', '/season-notes/ID'),
  'post /season-notes/{id}/restore': onIt('POST', 'season', '/season-notes/ID/restore'),
  'put /defaults/{key}': ({ send }) => send('PUT', '/defaults/fuchsia-single.tip.meanDays', { value: 75 }),
  'post /phones/code': async ({ send, ids }) => {
    ids.set('code', (await send('POST', '/phones/code')).code);
  },
  'post /phones': ({ send, ids }) => send('POST', '/phones', { code: ids.get('code'), name: 'Green phone' }),
  'delete /phones/{id}': async ({ send, ids, bench }) => {
    ids.set('phone', bench.services.db.prepare('SELECT id FROM phones').pluck().get() as string);
    await send('DELETE', `/phones/${ids.get('phone')}`);
  },
  'post /phones/{id}/restore': onIt('POST', 'phone', '/phones/ID/restore'),
  'put /keeping/plan': async ({ send }) => {
    const { plan } = await send('GET', '/keeping');
    await send('PUT', '/keeping/plan', plan);
  },
  'post /keeping/remeasuring/start': async ({ send, bench, stemmed }) => {
    bench.services.db.prepare(`UPDATE measurements SET method_version = '1' WHERE view_id = ?`).run(stemmed);
    await send('POST', '/keeping/remeasuring/start');
  },
  'post /keeping/remeasuring/stop': ({ send }) => send('POST', '/keeping/remeasuring/stop'),
  'post /sample/put-away': ({ send }) => send('POST', '/sample/put-away'),
  'post /sample/bring-back': ({ send }) => send('POST', '/sample/bring-back'),
  'post /keeping/backups': async ({ send, bench }) => {
    await send('POST', '/keeping/backups');
    await idle(bench);
  },
  'post /keeping/check': async ({ send, bench }) => {
    await send('POST', '/keeping/check', { of: 'store' });
    await idle(bench);
  },
  'post /keeping/backups/{name}/restore': async ({ send, bench }) => {
    const { backups } = await send('GET', '/keeping');
    await send('POST', `/keeping/backups/${backups[0].name}/restore`);
    await idle(bench);
  },
};

async function idle({ send }: TestBench): Promise<void> {
  await expect
    .poll(async () => (await send('GET', '/api/keeping')).body.underWay, { timeout: 20_000 })
    .toBe(null);
}

/** What changes otherwise, or something else of the same address. */
const FURTHER: Readonly<Record<string, (full: Full) => Promise<unknown> | unknown>> = {
  'a plant gets a rim': ({ send, one }) => send('PATCH', `/plants/${one}`, { rimMm: 120 }),
  'a plant is put away': ({ send, other }) => send('PATCH', `/plants/${other}`, { putAway: true }),
  'a plant is brought back': ({ send, other }) => send('PATCH', `/plants/${other}`, { putAway: false }),
  'a stand is placed on earth': ({ send, stand }) => send('PATCH', `/stands/${stand}`, { latitudeDeg: 52 }),
  'the day turns': ({ turnDayTo }) => turnDayTo(addDays(TODAY, 1)),
  'a week passes': ({ turnDayTo }) => turnDayTo(addDays(TODAY, 8)),
  'the light of a stand changes': ({ send, stand }) =>
    send('PATCH', `/stands/${stand}`, { lightSide: 'right' }),
  'another program writes a plant': ({ bench, one }) =>
    writeElsewhere(bench, `UPDATE plants SET name = 'Named elsewhere' WHERE id = '${one}'`),
  'another program sets a figure': ({ bench }) => writeElsewhere(bench, `UPDATE own_figures SET value = 90`),
  'another program removes a photo': ({ bench, stemmed }) =>
    writeElsewhere(bench, `UPDATE views SET removed_at = '2026-06-01T00:00:00.000Z' WHERE id = '${stemmed}'`),
  'a change is undone half-way': ({ bench, one }) => {
    const { db } = bench.services;
    const undone = db.transaction(() => {
      db.prepare('UPDATE plants SET name = ? WHERE id = ?').run('Undone', one);
      throw new Error('undone');
    });
    expect(undone).toThrow('undone');
  },
};

/** Steps that no answer tells of; any other one that changed none would prove nothing. */
const TELLS_NOTHING = [
  'post /stands',
  'post /stands/{id}/put-away',
  'post /stands/{id}/bring-back',
  'put /stands/{id}/empty-photo',
  'delete /stands/{id}/empty-photo',
  'patch /sittings/{id}/cuts/{cutId}',
  'post /views/{id}/warm',
  'post /plants/{id}/films',
  'post /phones/code',
  'post /phones',
  'delete /phones/{id}',
  'post /phones/{id}/restore',
  'put /keeping/plan',
  'post /keeping/remeasuring/stop',
  'post /keeping/backups',
  'post /keeping/check',
  'post /keeping/backups/{name}/restore',
  'a change is undone half-way',
];

function writeElsewhere({ services }: TestBench, sql: string): void {
  const script = `require('better-sqlite3')(process.argv[1]).prepare(process.argv[2]).run()`;
  execFileSync(process.execPath, ['-e', script, join(services.home.root, DATABASE_FILE), sql]);
}

describe('what is remembered of plants', () => {
  it('has a step for every address that changes something', () => {
    const changing = OPERATIONS.filter(({ method }) => method !== 'get');
    expect(Object.keys(STEPS).sort()).toEqual(changing.map(({ method, path }) => `${method} ${path}`).sort());
  });

  it('is never one of before, whatever was done', { timeout: 240_000 }, async () => {
    const full = await fullBench();
    let before = JSON.stringify(await answersServed(full.bench));
    const changed = new Set<string>();
    for (const [what, step] of Object.entries({ ...STEPS, ...FURTHER })) {
      await step(full);
      // While it is being measured and joined, and after.
      expect
        .soft(await answersServed(full.bench), `${what}, at once`)
        .toEqual(await answersAfresh(full.bench));
      await full.bench.services.queue.whenIdle();
      const served = await answersServed(full.bench);
      expect.soft(served, what).toEqual(await answersAfresh(full.bench));
      const text = JSON.stringify(served);
      if (text !== before) changed.add(what);
      before = text;
    }
    const idle = [...Object.keys(STEPS), ...Object.keys(FURTHER)].filter((what) => !changed.has(what));
    expect(idle).toEqual(TELLS_NOTHING);
  });
});
