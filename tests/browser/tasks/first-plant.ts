import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { headed, scrollTo } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

const GREENHOUSE = join(import.meta.dirname, '../../../sample-images/greenhouse-regal');
const WIDTH = 900;

/** A photo of the greenhouse stored anew and small: the store would not keep a sample photo twice. */
async function shotOf(file: string) {
  const buffer = await sharp(readFileSync(join(GREENHOUSE, file)))
    .resize(WIDTH)
    .keepExif()
    .jpeg({ quality: 90 })
    .toBuffer();
  return { name: file, mimeType: 'image/jpeg', buffer };
}

export const firstPlant: GrowerTask = {
  key: 'first-plant',
  title: 'The first plant: from its name over the stand to the first advice',
  bench: 'nothing',
  async run({ page, appUrl, shot }) {
    await page.goto(appUrl);
    await page.getByRole('main').getByRole('link', { name: 'Add a plant' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Kitchen regal');
    await page.getByLabel(/^Pot rim/).fill('120');
    await shot('the plant');
    await page.getByRole('button', { name: /^Add it/ }).click();
    const photos = page.getByRole('dialog', { name: 'Photos of Kitchen regal' });
    await photos.waitFor();
    await shot('asked for the first photo');
    await photos.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('link', { name: 'Set up the stand' }).click();

    const step = (number: number) => page.getByText(`Step ${number} of 5`).waitFor();
    const next = () => page.getByRole('button', { name: 'Next', exact: true }).click();
    await step(1);
    await page.getByLabel('Name of the stand').fill('Kitchen sill');
    await page.getByLabel(/^Camera to the middle of the pot/).fill('150');
    await shot('the stand: camera');
    await next();
    await step(2);
    await page.getByLabel('Dark plain cloth').check();
    await shot('the stand: backdrop');
    await next();
    await step(3);
    // The dots on the drawing are small and lie under their labels.
    await page.getByRole('radio', { name: 'from right' }).check({ force: true });
    await shot('the stand: light');
    await next();
    await step(4);
    await page.getByRole('radio', { name: /rim/ }).first().check();
    await shot('the stand: scale');
    await page.getByRole('button', { name: /^Keep the stand/ }).click();
    await step(5);
    await page
      .locator('input[type=file]')
      .last()
      .setInputFiles(await shotOf('empty.jpg'));
    await page.getByText(/It will do\.|Better take it again\./).waitFor();
    await shot('the stand: empty photo');
    await page.getByRole('button', { name: 'Done', exact: true }).click();

    await headed(page, 'Kitchen regal');
    await page.getByRole('button', { name: 'Add the first photo' }).click();
    await photos
      .locator('input[type=file]')
      .last()
      .setInputFiles(await shotOf('2026-11-15.jpg'));
    await photos.getByText(/Measured: roundness \d+/).waitFor();
    await shot('the photo is measured');
    await photos.getByRole('button', { name: 'Done', exact: true }).click();
    await page.locator('svg circle').first().waitFor();
    await shot('the ball on the photo');
    await scrollTo(page.getByRole('heading', { name: 'What to do' }));
    await shot('the first advice');
  },
};
