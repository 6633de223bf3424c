import { openPlant } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const sinceLastStop: GrowerTask = {
  key: 'since-last-stop',
  title: 'What changed since the last stop',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await openPlant(page, appUrl, 'Corner angel');
    await page.getByRole('button', { name: 'Compare two photos' }).click();
    const sheet = page.getByRole('dialog', { name: 'Two photos compared' });
    await sheet.waitFor();
    await sheet.getByRole('button', { name: 'Since the last stop' }).click();
    await shot('one drawn across the other');
    await sheet.getByRole('slider').focus();
    for (let step = 0; step < 5; step++) await page.keyboard.press('ArrowRight');
    await shot('drawn further, by keys');
    await sheet.getByText('See through').click();
    await shot('seen through');
    await sheet.getByText('Side by side').click();
    await shot('side by side');
    await sheet.getByRole('row', { name: /^Roundness/ }).scrollIntoViewIfNeeded();
    await shot('what changed, in numbers');
  },
};
