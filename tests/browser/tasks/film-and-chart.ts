import { openPlant, scrollTo } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const filmAndChart: GrowerTask = {
  key: 'film-and-chart',
  title: 'The film played and saved, a chart saved',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await openPlant(page, appUrl, 'Window regal');
    const saved = page.waitForEvent('download');
    const trend = page.getByRole('region', { name: 'Over the weeks' });
    await scrollTo(trend);
    await shot('the trend');
    await trend.getByRole('button', { name: /^Save this chart .* as SVG$/ }).click();
    if (!(await saved).suggestedFilename().endsWith('.svg')) throw new TypeError('Expected an SVG file');
    await page.getByRole('link', { name: 'Play as a film' }).click();
    await page.getByRole('heading', { name: 'Film', exact: true }).waitFor();
    await page.getByText('Picture 1 of 5').waitFor();
    await shot('the film stands');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.getByText('Picture 5 of 5').waitFor();
    await page.getByLabel('Outline', { exact: true }).check();
    await page.getByLabel('Ball', { exact: true }).check();
    await shot('the film at its end, with ball and outline');
    const film = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as WebP' }).click();
    await film;
    await page.getByText(/^Saved as /).scrollIntoViewIfNeeded();
    await shot('the film saved');
  },
};
