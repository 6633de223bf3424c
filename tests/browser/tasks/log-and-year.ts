import { headed, openPlant, scrollTo } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const logAndYear: GrowerTask = {
  key: 'log-and-year',
  title: 'The log, the days of the bloom, the year; another language and inches',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await openPlant(page, appUrl, 'Porch zonal');
    const log = page.getByRole('region', { name: 'Log' });
    await scrollTo(log);
    await log.getByRole('button', { name: 'Write it in words' }).click();
    const sheet = page.getByRole('dialog', { name: 'Write in the log' });
    await sheet.getByLabel('Note', { exact: true }).fill('Moved a foot away from the door.');
    await shot('a line of the log');
    await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
    await log.getByText('Moved a foot away from the door.').waitFor();
    await shot('the log');
    const season = page.getByRole('region', { name: 'Season' });
    const asked = season.getByText(/^Put (this day|these days) into the record\?$/);
    await asked.waitFor();
    await scrollTo(season.getByRole('img', { name: /^Share of the canopy in flower/ }));
    await shot('the bloom read off the photos');
    await season.getByRole('button', { name: /^Yes, put/ }).click();
    await asked.waitFor({ state: 'detached' });
    await shot('its days in the record');
    await page.getByRole('link', { name: 'Its year' }).click();
    await headed(page, 'Porch zonal: its year');
    await shot('the year');
    await page.getByRole('link', { name: 'How and cautions' }).click();
    await headed(page, 'How and cautions');
    await scrollTo(page.getByRole('heading', { name: 'Language and lengths' }));
    await shot('language and lengths');
    await page.getByLabel('Inches').check();
    await page.getByText('Numbers are given in inches and feet.').waitFor();
    await page.getByLabel('Deutsch').check();
    await page.waitForFunction(() => document.documentElement.lang === 'de');
    await page.goto(appUrl);
    await page.getByRole('article').first().waitFor();
    await shot('the bench in German');
    await page.getByRole('article').getByRole('link', { name: 'Porch zonal', exact: true }).click();
    await headed(page, 'Porch zonal');
    await shot('the plant in German and inches');
  },
};
