import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantSeasonAnswer } from '../../server/schemas/season.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { openCorrections } from './open-corrections.ts';
import { type AppOnDay, startOnDay } from './start-on-day.ts';
import { undoOf } from './undo-of.ts';

/** Other tests share the machine. */
const PATIENCE_MS = 180_000;
const MEASURING_MS = 180_000;
const PHOTO = join(import.meta.dirname, '../../sample-images/window-regal/2026-11-15.jpg');

describe('a grower’s season', () => {
  let app: AppOnDay;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let plantId: string;
  const faults: string[] = [];

  const season = () => page.getByRole('region', { name: 'Season' });
  const work = () => page.getByRole('region', { name: 'Work' });
  const log = () => page.getByRole('region', { name: 'Log' });
  const answer = async () =>
    (await (await fetch(`${app.url}/api/plants/${plantId}/season`)).json()) as PlantSeasonAnswer;
  const openPlant = async () => {
    await page.goto(`${app.url}/plants/${plantId}`);
    await season().getByRole('heading', { name: 'Season' }).waitFor();
    await work().waitFor();
  };

  beforeAll(async () => {
    browser = await openBrowser();
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      locale: 'en-GB',
      reducedMotion: 'reduce',
      // Days must not slip where the sun is half a day ahead.
      timezoneId: 'Pacific/Auckland',
    });
    // Shorter than the tests' own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 3);
    app = await startOnDay(context, '2026-04-01');
    page = await context.newPage();
    noteFaults(page, faults);
    const form = { name: 'Lantern', kind: 'fuchsia-single', variety: 'Pale Lantern', rimMm: 130 };
    const added = await fetch(`${app.url}/api/plants`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(form),
    });
    ({ id: plantId } = (await added.json()) as { id: string });
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'writes down a show with a class, told beside the entry what cannot be read',
    async () => {
      await page.goto(app.url);
      await page.getByRole('link', { name: 'Shows', exact: true }).click();
      await page.getByText('No show is written down yet.').waitFor();
      await page.getByRole('button', { name: 'Add a show' }).click();
      const sheet = page.getByRole('dialog', { name: 'Add a show' });
      await sheet.getByLabel('Name', { exact: true }).fill('Alder Vale Summer Show');
      await sheet.getByLabel('Day', { exact: true }).fill('2026-08-13');
      await sheet.getByLabel('Place (may stay empty)').fill('Alder Vale, village hall');
      await sheet.getByRole('button', { name: 'Add a class' }).click();
      await sheet.getByLabel('Class 1: number or name').fill('Class 12, one fuchsia');
      await sheet.getByLabel('Widest pot rim, mm').fill('five inches');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await sheet.getByText('Give millimetres, for example 450.').waitFor();
      await sheet.getByLabel('Widest pot rim, mm').fill('120 mm');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await sheet.waitFor({ state: 'detached' });
      await page
        .getByRole('article', { name: 'Alder Vale Summer Show' })
        .getByText('Alder Vale, village hall')
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'enters the plant, and reads at once what the class says of it',
    async () => {
      await page.getByRole('button', { name: 'Enter a plant for Alder Vale Summer Show' }).click();
      const sheet = page.getByRole('dialog', { name: 'Enter for Alder Vale Summer Show' });
      await sheet.getByRole('checkbox', { name: /^Lantern/ }).check();
      await sheet.getByLabel('Class').selectOption({ label: 'Class 12, one fuchsia' });
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await page
        .getByText('The pot’s rim measures 130 mm; the class allows 120 mm: 10 mm too much.')
        .waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'reads the stops planned back, and the likely bloom as a picture and as a table',
    async () => {
      await openPlant();
      await season().getByText('Last stop by 8 June 2026, 66 days before the show').waitFor();
      await season().getByText('Last stop (tip), planned 2 Jun to Mon 8 Jun').waitFor();
      await season()
        .getByRole('img', { name: /In full bloom on the show day, Thu 13 Aug: \d+ %/ })
        .waitFor();
      await season().getByText('The same as a table').click();
      const twin = season().getByRole('row', { name: /Thu 13 Aug.*In full bloom: \d+ %/ });
      await twin.waitFor();
      await season()
        .getByText(/All default: you have no record/)
        .waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'does the last stop late, with the caution beside the hand, and hears what that means',
    async () => {
      await app.turnTo('2026-06-13');
      await openPlant();
      await season().getByText('every day from now on makes the plant later').waitFor();
      await season().getByText('Soft tips snap most cleanly').waitFor();
      await season().getByRole('button', { name: 'Stopped today (tip)' }).click();
      await season()
        .getByText(/^Done 5 days late\. The chance of being late is \d+ %/)
        .waitFor();
      const { plan } = await answer();
      expect(plan?.steps.at(-1)).toMatchObject({ state: 'done', doneOn: '2026-06-13', offDays: 5 });
      // One in ten was accepted; five days more are a good deal worse.
      expect(plan?.effect?.chanceLate).toBeGreaterThan(0.2);
      await undoOf(page, 'written down for today.').click();
      await season()
        .getByText(/^No last stop is written down/)
        .waitFor();
      await season().getByRole('button', { name: 'Stopped today (tip)' }).click();
      await season()
        .getByText(/^Done 5 days late/)
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'has the work that follows from it done with one tap, skips some and takes that back',
    async () => {
      const airy = work().getByRole('listitem').filter({ hasText: 'Keep the air dry and moving' });
      await airy.getByText('Fresh cuts rot easily').waitFor();
      await airy.getByRole('button', { name: /^Done/ }).click();
      await work().getByText('Done, skipped or over: 1').click();
      await work().getByText('Done on 13 June 2026.').waitFor();
      const takeBack = work().getByRole('button', { name: /^Take back ?: Keep the air dry/ });
      await takeBack.click();
      await work()
        .getByRole('button', { name: /^Move or skip ?: Keep the air dry/ })
        .click();
      const sheet = page.getByRole('dialog', { name: 'Move or skip' });
      await sheet.getByText('Skip it').click();
      await sheet.getByLabel('Why').fill('It stands in the porch.');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await work().getByText('Done, skipped or over: 1').click();
      await work().getByText('Skipped: It stands in the porch.').waitFor();
      await takeBack.click();
      await airy.getByRole('button', { name: /^Done/ }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'sets work of one’s own',
    async () => {
      await work().getByRole('button', { name: 'Add work of your own' }).click();
      const sheet = page.getByRole('dialog', { name: 'Add work of your own' });
      await sheet.getByLabel('What is to be done').fill('Feed at half strength.');
      await sheet.getByLabel(/^Comes round/).fill('7');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      const feed = work().getByRole('listitem').filter({ hasText: 'Feed at half strength.' }).first();
      await feed.getByText('Read the label of what you feed.').waitFor();
      await feed.getByRole('button', { name: /^Done/ }).click();
      await log().getByRole('listitem').filter({ hasText: 'Fed.' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'notes first flower and full bloom with one tap each',
    async () => {
      await app.turnTo('2026-08-10');
      await openPlant();
      await log().getByRole('button', { name: 'First flower open', exact: true }).click();
      await log().getByRole('listitem').filter({ hasText: 'First flower open.' }).waitFor();
      await app.turnTo('2026-08-25');
      await openPlant();
      await log().getByRole('button', { name: 'In full bloom', exact: true }).click();
      await log().getByRole('listitem').filter({ hasText: 'In full bloom.' }).waitFor();
      await season().getByRole('button', { name: 'Note the result at Alder Vale Summer Show' }).click();
      const sheet = page.getByRole('dialog', { name: 'Lantern at Alder Vale Summer Show' });
      await sheet.getByLabel('What happened on the day').fill('Too late: buds only.');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await season().getByText('Too late: buds only.').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'plans the next season earlier, from the record, and sees how much of the figure is its own',
    async () => {
      await app.turnTo('2026-09-01');
      await fetch(`${app.url}/api/shows`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: 'Alder Vale again', day: '2027-08-13' }),
      });
      await openPlant();
      await season().getByRole('button', { name: 'Enter it for a show' }).click();
      await page
        .getByRole('dialog', { name: /^Enter Lantern/ })
        .getByRole('button', { name: 'Keep', exact: true })
        .click();
      // The default counts as one record and says 60 days; this season took 73.
      await season().getByText('Half default, half your own record.').waitFor();
      const { plan } = await answer();
      expect(plan?.planned.meanDays).toBeCloseTo((60 + 73) / 2, 9);
      const daysBefore = plan?.last.daysBeforeShow ?? 0;
      expect(daysBefore).toBeGreaterThan(66);
      await season().getByText(`${daysBefore} days before the show`).waitFor();
      await season().getByText('What that rests on, and your own figures').click();
      await season().getByText('(1 × 60 + 73) ÷ 2 = 66.5 days').waitFor();
      await season()
        .getByText(/tip stop Sat,? 13 Jun.*full bloom Tue,? 25 Aug.*73 days/)
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'sets the record aside with a word on the season, and takes that back',
    async () => {
      await season().getByRole('button', { name: 'Add a word on a season' }).click();
      const sheet = page.getByRole('dialog', { name: 'A word on a season' });
      await sheet.getByLabel('What it was like').fill('Cold and dark.');
      await sheet.getByLabel('From', { exact: true }).fill('2026-06-01');
      await sheet.getByLabel('To', { exact: true }).fill('2026-08-31');
      await sheet.getByRole('checkbox', { name: /^Set them aside/ }).check();
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await season().getByText('Set aside by your note: Cold and dark.').waitFor();
      await season()
        .getByText(/All default: you have no record/)
        .waitFor();
      expect((await answer()).plan?.last.daysBeforeShow).toBe(66);
      await season().getByRole('button', { name: 'Remove: Cold and dark.' }).click();
      await season().getByText('Half default, half your own record.').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'sets a figure of its own, and goes back to the default',
    async () => {
      await season().getByRole('button', { name: 'Set figures of your own' }).click();
      const sheet = page.getByRole('dialog', { name: 'Figures that plans rest on' });
      await sheet.getByText(/^Published\. Default of 60 days/).waitFor();
      await sheet.getByRole('button', { name: /^Change ?: Days from a tip stop/ }).click();
      await sheet.getByLabel(/^Days from a tip stop to full bloom: your own/).fill('700');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await sheet
        .getByText('Days from a tip stop to full bloom: give a number from 14 to 400 days.')
        .waitFor();
      await sheet.getByLabel(/^Days from a tip stop to full bloom: your own/).fill('80');
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await sheet.getByText('Your own figure. The default was 60.').waitFor();
      expect((await answer()).plan?.planned.meanDays).toBeCloseTo((80 + 73) / 2, 9);
      await sheet.getByRole('button', { name: /^Back to the default ?: Days from a tip stop/ }).click();
      await sheet.getByText(/^Published\. Default of 60 days/).waitFor();
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'aims at two shows, picks which one rules, and is told what that does to the other',
    async () => {
      await fetch(`${app.url}/api/shows`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: 'Reed Quay Late Show', day: '2027-09-20' }),
      });
      await openPlant();
      await season().getByRole('button', { name: 'Enter it for another show' }).click();
      await page
        .getByRole('dialog', { name: /^Enter Lantern/ })
        .getByRole('button', { name: 'Keep', exact: true })
        .click();
      await season()
        .getByText(/^Reed Quay Late Show, 20 September 2027, 38 days later/)
        .waitFor();
      await season().getByRole('button', { name: 'Plan the stops for this one' }).click();
      await season()
        .getByText(/^Alder Vale again, 13 August 2027, 38 days earlier/)
        .waitFor();
      expect((await answer()).plan?.showDay).toBe('2027-09-20');
    },
    PATIENCE_MS,
  );

  it(
    'removes a show, and brings it back with its entries',
    async () => {
      await page.goto(`${app.url}/shows`);
      const card = page.getByRole('article', { name: 'Reed Quay Late Show' });
      await page.getByRole('button', { name: 'Remove Reed Quay Late Show' }).click();
      await card.waitFor({ state: 'detached' });
      await expect.poll(async () => (await answer()).plan?.showDay).toBe('2027-08-13');
      await undoOf(page, 'Reed Quay Late Show is removed').click();
      await card.getByRole('link', { name: 'Lantern' }).waitFor();
      expect((await answer()).plan?.showDay).toBe('2027-09-20');
    },
    PATIENCE_MS,
  );

  it(
    'leaves the photos of a limp plant out of the trend, and takes them in again',
    async () => {
      const body = new FormData();
      body.set('day', '2026-09-01');
      body.set('photos', new Blob([readFileSync(PHOTO)], { type: 'image/jpeg' }), 'limp.jpg');
      expect((await fetch(`${app.url}/api/plants/${plantId}/photos`, { method: 'POST', body })).ok).toBe(
        true,
      );
      await app.whenMeasured();
      await openPlant();
      await log().getByRole('button', { name: 'Limp from drought', exact: true }).click();
      await log().getByRole('button', { name: 'Leave that day’s photos out of the trend' }).click();
      const photo = page.getByRole('region', { name: 'Photo', exact: true });
      await photo.getByText('This sitting is left out of trend and advice: limp from drought.').waitFor();
      await photo.getByRole('button', { name: 'Take it in again' }).click();
      await photo.getByText('This sitting is left out').waitFor({ state: 'detached' });
      await openCorrections(page);
      await photo.getByRole('button', { name: 'Leave this sitting out' }).click();
      const sheet = page.getByRole('dialog', { name: 'Leave this sitting out' });
      await sheet.getByRole('radio', { name: 'Limp from drought', checked: true }).waitFor();
      await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
      await photo.getByText('This sitting is left out of trend and advice').waitFor();
    },
    MEASURING_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
