import { headed, openPlant, scrollTo } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const enterAShow: GrowerTask = {
  key: 'enter-a-show',
  title: 'A show entered, and the stops planned back from it',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await page.goto(appUrl);
    await page.getByRole('link', { name: 'Shows', exact: true }).click();
    await headed(page, 'Shows');
    await shot('the shows');
    await page.getByRole('button', { name: 'Add a show' }).click();
    const sheet = page.getByRole('dialog', { name: 'Add a show' });
    await sheet.getByLabel('Name', { exact: true }).fill('Alder Vale Early Show');
    await sheet.getByLabel('Day', { exact: true }).fill('2027-05-08');
    await sheet.getByLabel('Place (may stay empty)').fill('Alder Vale, village hall');
    await sheet.getByRole('button', { name: 'Add a class' }).click();
    await sheet.getByLabel('Class 1: number or name').fill('Class 3, one regal');
    await sheet.getByLabel('Widest pot rim, mm').fill('120');
    await shot('a show with a class');
    await sheet.getByRole('button', { name: 'Keep', exact: true }).click();
    await sheet.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Enter a plant for Alder Vale Early Show' }).click();
    const entering = page.getByRole('dialog', { name: 'Enter for Alder Vale Early Show' });
    await entering.getByRole('checkbox', { name: /^Old regal/ }).check();
    await entering.getByLabel('Class').selectOption({ label: 'Class 3, one regal' });
    await shot('the plant entered in its class');
    await entering.getByRole('button', { name: 'Keep', exact: true }).click();
    await entering.waitFor({ state: 'detached' });
    await scrollTo(page.getByRole('article', { name: 'Alder Vale Early Show' }));
    await shot('what the class says of the plant');
    await openPlant(page, appUrl, 'Old regal');
    const season = page.getByRole('region', { name: 'Season' });
    await scrollTo(season);
    await season.getByText(/^Last stop by /).waitFor();
    await shot('the plan of its stops');
    await scrollTo(season.getByRole('img', { name: /In full bloom on the show day/ }));
    await shot('the likely bloom');
    await page.getByRole('link', { name: 'Calendar', exact: true }).click();
    await headed(page, 'Calendar');
    await page.getByRole('row', { name: /Old regal/ }).waitFor();
    await shot('all seasons on the calendar');
  },
};
