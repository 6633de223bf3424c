import { undoOf } from '../undo-of.ts';
import { headed, scrollTo } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const plantsToTurn: GrowerTask = {
  key: 'plants-to-turn',
  title: 'Which plants need turning, and the turn written down',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await page.goto(appUrl);
    const line = page
      .getByRole('listitem')
      .filter({ has: page.getByRole('heading', { name: /^Turn the pot/ }) })
      .first();
    await scrollTo(line);
    await shot('turning among the work of the day');
    await line.getByRole('button', { name: /^(One by one|Why)/ }).click();
    await shot('which plants, one by one');
    await page.goto(appUrl);
    await page.getByRole('article').getByRole('link', { name: 'Window regal', exact: true }).click();
    await headed(page, 'Window regal');
    const light = page.getByRole('region', { name: 'Light and turning' });
    await scrollTo(light);
    await shot('its light, and the next turn');
    await light
      .getByRole('button', { name: /^Turned .* today$/ })
      .first()
      .click();
    await light.getByText(/faces the light since today\.$/).waitFor();
    await shot('the turn written down');
    await undoOf(page, /Written down: .* faces the light from today\./).click();
    await page.getByText('Taken back.').waitFor();
    await shot('and taken back');
  },
};
