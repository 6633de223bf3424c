import { openCorrections } from '../open-corrections.ts';
import { openPlant } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

export const setASittingRight: GrowerTask = {
  key: 'set-a-sitting-right',
  title: 'A sitting left out, a date changed, both taken back',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await openPlant(page, appUrl, 'Porch zonal');
    const photo = page.getByRole('region', { name: 'Photo', exact: true });
    await openCorrections(page);
    await photo.getByRole('button', { name: 'Leave this sitting out' }).click();
    const why = page.getByRole('dialog', { name: 'Leave this sitting out' });
    await why.waitFor();
    await shot('why it is left out');
    await why.getByRole('button', { name: 'Keep', exact: true }).click();
    await photo.getByText('This sitting is left out of trend and advice').waitFor();
    await shot('left out');
    await photo.getByRole('button', { name: 'Take it in again' }).click();
    await photo.getByText('This sitting is left out').waitFor({ state: 'detached' });
    await photo.getByRole('button', { name: 'Correct or remove this photo' }).click();
    const correct = page.getByRole('dialog', { name: 'Correct this photo' });
    await correct.getByLabel('Day it was taken').fill('2026-11-21');
    await shot('the day corrected');
    await correct.getByRole('button', { name: 'Keep', exact: true }).click();
    await correct.waitFor({ state: 'detached' });
    const hand = page.getByRole('region', { name: 'Set by hand' });
    await hand.scrollIntoViewIfNeeded();
    await shot('said to be set by hand');
    await hand.getByRole('button', { name: 'Take the camera’s day' }).click();
    await hand.waitFor({ state: 'detached' });
    await shot('taken back');
  },
};
