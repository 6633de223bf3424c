import { headed } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const firstMinute: GrowerTask = {
  key: 'first-minute',
  title: 'The first minute: walk the sample bench and put it away',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await page.goto(appUrl);
    await page.getByText('Sample', { exact: true }).first().waitFor();
    await shot('the bench, with the sample plants');
    await page.getByRole('article').getByRole('link', { name: 'Corner angel', exact: true }).click();
    await headed(page, 'Corner angel');
    await page.getByRole('heading', { name: 'What to do' }).waitFor();
    await shot('a plant');
    await page
      .getByText(/^Roundness/)
      .first()
      .scrollIntoViewIfNeeded();
    await shot('its numbers');
    await page.getByRole('link', { name: 'Rondure, to the bench' }).click();
    await page.getByRole('button', { name: 'Put the sample plants away' }).click();
    await headed(page, 'The bench is empty');
    await shot('the bench put away');
  },
};
