import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../core/day/day.ts';
import type { Show } from '../../core/season/show.ts';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import type { Calendar } from '../../server/schemas/season.ts';
import type { WorkList } from '../../server/schemas/work.ts';
import { todayHere } from '../../web/src/words/day-words.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

/** Other tests share the machine. */
const PATIENCE_MS = 180_000;
const COUNT = 12;

/** Pages of a PDF as Chromium writes it: the count of its page tree. */
function pagesOf(pdf: Buffer): number {
  return Number(/\/Count (\d+)/.exec(pdf.toString('latin1'))?.[1]);
}

describe('a grower with many plants', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let show: Show;
  const plants: Plant[] = [];
  const faults: string[] = [];
  const today = todayHere();

  const api = async <Answer>(path: string, init: { method?: string; json?: unknown } = {}) => {
    const answer = await fetch(`${app.url}/api${path}`, {
      method: init.method ?? 'GET',
      ...(init.json === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(init.json) }),
    });
    return (answer.status === 204 ? null : await answer.json()) as Answer;
  };
  const pageOf = (plant: Plant) => api<PlantPage>(`/plants/${plant.id}`);
  const notesOfAll = async () =>
    (await Promise.all(plants.map(pageOf))).flatMap(({ notes }) => notes.map(({ kind }) => kind));
  const workOfAll = async (kind: string) => {
    const ids = new Set(plants.map(({ id }) => id));
    const { work } = await api<WorkList>('/work');
    return work.filter((one) => ids.has(one.plantId) && one.kind === kind);
  };
  const main = () => page.getByRole('main');
  const names = () => main().getByRole('heading', { level: 3, name: /^Bay / }).allTextContents();
  const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  /** The bench with only the plants of the show. */
  const openBench = async (more = '') => {
    await page.goto(`${app.url}/?show=${show.id}${more}`);
    await main().getByRole('heading', { name: 'Bay 01' }).waitFor();
  };
  const undo = (words: string) => undoOf(page, words).click();
  const lineOf = (what: string) =>
    main()
      .getByRole('listitem')
      .filter({ has: page.getByRole('heading', { name: what }) });

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    context = await browser.newContext({
      viewport: { width: 1280, height: 900 },
      reducedMotion: 'reduce',
      locale: 'en-GB',
    });
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'finds no tools in the way while plants are few',
    async () => {
      await page.goto(app.url);
      await main().getByRole('heading', { level: 1, name: 'The bench is empty' }).waitFor();
      expect(await page.getByRole('search').count()).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'finds plants by show, kind and name, in the order asked for',
    async () => {
      show = await api<Show>('/shows', {
        method: 'POST',
        json: { name: 'Fennimore Show', day: addDays(today, 200), place: 'Corn hall' },
      });
      for (let at = 1; at <= COUNT; at++) {
        const form = {
          name: `Bay ${String(at).padStart(2, '0')}`,
          kind: at % 3 === 0 ? 'fuchsia-single' : 'regal',
          rimMm: 130,
        };
        const plant = await api<Plant>('/plants', { method: 'POST', json: form });
        await api(`/plants/${plant.id}/entries/${show.id}`, { method: 'PUT', json: {} });
        plants.push(plant);
      }
      await page.goto(app.url);
      await page.getByLabel('Show', { exact: true }).selectOption('Fennimore Show');
      await expect.poll(async () => (await names()).length, { timeout: PATIENCE_MS }).toBe(COUNT);
      await page.getByLabel('In order of').selectOption('Name');
      await main().getByRole('heading', { level: 2, name: 'By name 12' }).waitFor();
      await expect.poll(names).toEqual(plants.map(({ name }) => name));
      await page.getByLabel('Kind', { exact: true }).selectOption('Fuchsia, single');
      await expect.poll(names, { timeout: PATIENCE_MS }).toEqual(['Bay 03', 'Bay 06', 'Bay 09', 'Bay 12']);
      await page.getByLabel('Name or variety').fill('09');
      await expect.poll(names, { timeout: PATIENCE_MS }).toEqual(['Bay 09']);
      await page.getByLabel('Only what is late').check();
      await main().getByText('No plant on the bench is like that.').waitFor();
      await page.reload();
      await main().getByText('No plant on the bench is like that.').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'has the day’s work done on all of them with one tap, and takes it back',
    async () => {
      await openBench();
      await lineOf('Photograph it').getByText('12 plants').waitFor();
      await lineOf('Photograph it').getByRole('button', { name: 'All 12 done' }).click();
      await main().getByText('Done or skipped: 12', { exact: true }).waitFor();
      await expect
        .poll(async () => (await workOfAll('photograph')).filter(({ state }) => state === 'done').length, {
          timeout: PATIENCE_MS,
        })
        .toBe(COUNT);
      await undo('Done: 12 plants. Photograph it');
      await lineOf('Photograph it').waitFor();
      await expect
        .poll(async () => (await workOfAll('photograph')).filter(({ state }) => state === 'done'))
        .toEqual([]);
    },
    PATIENCE_MS,
  );

  it(
    'has work done that the log tells of by a line in the log of each',
    async () => {
      const line = lineOf('Clear yellow and dead leaf');
      await line.getByRole('button', { name: 'All 12 done' }).click();
      await line.waitFor({ state: 'detached' });
      await expect.poll(notesOfAll, { timeout: PATIENCE_MS }).toEqual(Array(COUNT).fill('cleared-leaf'));
      await undo('Done: 12 plants. Clear yellow and dead leaf');
      await line.waitFor();
      await expect.poll(notesOfAll).toEqual([]);
    },
    PATIENCE_MS,
  );

  it(
    'has turning written down as turning, so that it comes round from there',
    async () => {
      const line = lineOf('Turn the pot.');
      await line.getByRole('button', { name: 'All 12 done' }).click();
      await line.waitFor({ state: 'detached' });
      await expect.poll(notesOfAll, { timeout: PATIENCE_MS }).toEqual(Array(COUNT).fill('turned'));
      await undo('Done: 12 plants. Turn the pot.');
      await line.waitFor();
      await expect.poll(notesOfAll).toEqual([]);
    },
    PATIENCE_MS,
  );

  it(
    'skips one with a reason, and puts it on the list again',
    async () => {
      const line = lineOf('Turn the pot.');
      await line.getByRole('button', { name: 'One by one' }).click();
      await line.getByRole('button', { name: 'Move or skip Bay 04' }).click();
      const sheet = page.getByRole('dialog', { name: 'Move or skip' });
      await sheet.getByText('Skip it').click();
      await sheet.getByRole('button', { name: 'Keep' }).click();
      await sheet.getByText('Say why, for example').waitFor();
      await sheet.getByLabel('Why').fill('It stands under glass that is shaded.');
      await sheet.getByRole('button', { name: 'Keep' }).click();
      await main().getByText('Done or skipped: 1', { exact: true }).click();
      await main().getByText('It stands under glass that is shaded.').waitFor();
      await main().getByRole('button', { name: 'Take back' }).click();
      await lineOf('Turn the pot.').getByText('12 plants').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'writes one thing down for many, and takes it back',
    async () => {
      await openBench('&kind=regal');
      await page.getByRole('button', { name: 'Choose many' }).click();
      const bar = page.getByRole('region', { name: 'Many at once' });
      expect(await bar.getByRole('button', { name: 'Watered' }).isDisabled()).toBe(true);
      await bar.getByRole('button', { name: 'All 8 shown' }).click();
      await main().getByRole('checkbox', { name: 'Bay 01' }).uncheck();
      await bar.getByText('7 chosen').waitFor();
      await bar.getByRole('button', { name: 'Watered' }).click();
      await page.getByText('Watered: written down for 7 plants.').waitFor();
      expect(await notesOfAll()).toEqual(Array(7).fill('watered'));
      await undo('Watered: written down for 7 plants.');
      await page.getByText('Taken back.').waitFor();
      expect(await notesOfAll()).toEqual([]);
    },
    PATIENCE_MS,
  );

  it(
    'writes a stop down for many, with the caution where the hand is',
    async () => {
      const bar = page.getByRole('region', { name: 'Many at once' });
      await bar.getByRole('button', { name: 'None' }).click();
      await main().getByRole('checkbox', { name: 'Bay 01' }).check();
      await main().getByRole('checkbox', { name: 'Bay 02' }).check();
      await bar.getByRole('button', { name: 'Write down…' }).click();
      const sheet = page.getByRole('dialog', { name: 'Write down for 2 plants' });
      await sheet.getByLabel('What was done or seen').selectOption('Deep stop');
      await sheet.getByText('A cut cannot be undone', { exact: false }).waitFor();
      await sheet.getByLabel('Note (may stay empty)').fill('All stems.');
      await sheet.getByRole('button', { name: 'Keep' }).click();
      await page.getByText('Deep stop: written down for 2 plants.').waitFor();
      const [first, second, third] = await Promise.all(plants.slice(0, 3).map(pageOf));
      for (const written of [first, second]) {
        expect(written?.stops).toMatchObject([{ day: today, depth: 'deep', note: 'All stems.' }]);
      }
      expect(third?.stops).toEqual([]);
      await bar.getByRole('button', { name: 'Finish' }).click();
      await lineOf('No water until').getByText('2 plants').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'reads it on a phone, with room for the thumb',
    async () => {
      await page.setViewportSize({ width: 390, height: 844 });
      await openBench();
      await main()
        .getByText(/more for today/)
        .click();
      await lineOf('Turn the pot.').waitFor();
      expect(await overflow()).toBe(0);
      const heights = await main()
        .locator('button:visible, summary:visible, select:visible, input:visible:not([type=checkbox])')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await page.goto(`${app.url}/calendar`);
      await main().getByRole('heading', { name: 'Calendar', exact: true }).waitFor();
      const table = main().getByRole('region', { name: /scrolls sideways/ });
      const bay = table.getByRole('rowheader', { name: /Bay 01/ });
      const besideEdgePx = () =>
        bay.evaluate((name) => {
          const edge = name.closest('section')?.getBoundingClientRect().x ?? Number.NaN;
          return name.getBoundingClientRect().x - edge;
        });
      const before = await besideEdgePx();
      await table.evaluate((scroller) => {
        scroller.scrollLeft += 300;
      });
      expect(await besideEdgePx()).toBeCloseTo(before, 0);
      expect(await overflow()).toBe(0);
      await page.setViewportSize({ width: 1280, height: 900 });
    },
    PATIENCE_MS,
  );

  it(
    'sees the season of all on the calendar, each sign in words',
    async () => {
      const { plants: rows, weeks } = await api<Calendar>('/calendar');
      const planned = rows.find(({ name }) => name === 'Bay 03')?.steps.at(-1);
      expect(planned?.state).toBe('to-come');
      await page.goto(`${app.url}/calendar`);
      const row = main().getByRole('row', { name: /Bay 03/ });
      const sign = row.getByRole('img', { name: planned?.words ?? 'no words' });
      await sign.waitFor();
      // The window stands under the week in which it begins.
      const at = weeks.findIndex(
        ({ monday }) => planned && monday <= planned.window.from && planned.window.from < addDays(monday, 7),
      );
      const weeksFromLeft = () =>
        sign.evaluate((drawn, count) => {
          const track = drawn.closest('td, [role=cell]')?.getBoundingClientRect();
          if (!track) throw new TypeError('Expected a sign on a track');
          return ((drawn.getBoundingClientRect().x - track.x) / track.width) * count;
        }, weeks.length);
      // A sign may begin a px early.
      await expect.poll(weeksFromLeft).toBeGreaterThanOrEqual(at - 0.05);
      expect(await weeksFromLeft()).toBeLessThan(at + 1);
      await sign.click();
      await main()
        .getByRole('status')
        .filter({ hasText: planned?.words ?? '' })
        .waitFor();
      await main()
        .getByRole('row', { name: /Bay 01/ })
        // The grower's own words stand between signs that are not seen.
        .getByRole('img', { name: /^Deep stop on .* \u2068All stems\.\u2069/ })
        .waitFor();
      await main().getByText('The same in words').click();
      await main()
        .getByRole('cell', { name: planned?.words ?? '' })
        .first()
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'prints twelve plants on one page of A4 and of Letter',
    async () => {
      await page.goto(`${app.url}/calendar`);
      await main().getByLabel('Plants', { exact: true }).selectOption('Entered for Fennimore Show');
      await main().getByText('12 plants', { exact: false }).first().waitFor();
      for (const format of ['A4', 'Letter']) {
        expect(pagesOf(await page.pdf({ format, landscape: true, preferCSSPageSize: false }))).toBe(1);
      }
      await main().getByLabel('Plants', { exact: true }).selectOption('All on the bench');
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByRole('navigation').isVisible()).toBe(false);
      await page.emulateMedia({ media: null });
    },
    PATIENCE_MS,
  );

  it(
    'is given an address to subscribe to that calendar programs can read',
    async () => {
      const entry = main().getByLabel('Address to subscribe to');
      await main().getByLabel('With what comes round every week', { exact: false }).check();
      const weekly = await entry.inputValue();
      await main().getByLabel('With what comes round every week', { exact: false }).uncheck();
      const address = await entry.inputValue();
      await main().getByRole('button', { name: 'Copy the address' }).click();
      await main().getByText('Copied.').waitFor();
      expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(address);
      const read = async (from: string) => (await fetch(from)).text();
      const file = await read(address);
      expect(file).toMatch(/^BEGIN:VCALENDAR/);
      expect(file).toContain('Fennimore Show');
      expect((await read(weekly)).length).toBeGreaterThan(file.length);
      const download = page.waitForEvent('download');
      await main().getByRole('link', { name: 'Save it once as a file' }).click();
      expect((await download).suggestedFilename()).toBe('rondure.ics');
    },
    PATIENCE_MS,
  );

  it(
    'looks back on a plant’s year, and takes it along as a table',
    async () => {
      const [plant] = plants as [Plant];
      await api(`/plants/${plant.id}/entries/${show.id}`, {
        method: 'PUT',
        json: { result: 'Second of nine.' },
      });
      await page.goto(`${app.url}/plants/${plant.id}`);
      await page.getByRole('link', { name: 'Its year' }).click();
      await main().getByRole('heading', { level: 1, name: 'Bay 01: its year' }).waitFor();
      await main().getByText('Second of nine.').waitFor();
      await main().getByText('The day of full bloom is not noted', { exact: false }).waitFor();
      await main().getByText('No photo was taken in this time.').waitFor();
      await main()
        .getByRole('img', { name: /^Deep stop/ })
        .waitFor();
      await main()
        .getByLabel('Which year')
        .selectOption(`Calendar year ${today.slice(0, 4)}`);
      await expect
        .poll(() => page.url(), { timeout: PATIENCE_MS })
        .toContain(`from=${today.slice(0, 4)}-01-01`);
      await main()
        .getByText(`1 January ${today.slice(0, 4)} to 31 December`, { exact: false })
        .waitFor();
      const coming = page.waitForEvent('download');
      await main().getByRole('link', { name: 'Save as a table (CSV)' }).click();
      const download = await coming;
      expect(download.suggestedFilename()).toBe(`Bay-01-${today.slice(0, 4)}.csv`);
      const lines = readFileSync(await download.path(), 'utf8').split('\r\n');
      expect(lines[0]).toBe('day,what,roundness,±,symmetry,±,lopsidedness %,±,words');
      expect(lines).toContain(`${today},deep stop,,,,,,,`);
    },
    PATIENCE_MS,
  );

  it('leaves no fault in the browser’s log', () => {
    expect(faults).toEqual([]);
  });
});
