import { openCorrections } from '../open-corrections.ts';
import { paintByMouse } from '../photo-places.ts';
import { openPlant } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';
import { newestView, plantNamed } from './sample-bench.ts';

export const mendByHand: GrowerTask = {
  key: 'mend-by-hand',
  title: 'An outline mended by brush, and the rim set by hand',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    const { id } = await plantNamed(appUrl, 'Greenhouse regal');
    const view = await newestView(appUrl, id);
    await openPlant(page, appUrl, 'Greenhouse regal');
    await openCorrections(page);
    await page.getByRole('button', { name: 'Mend the outline' }).click();
    const brush = page.getByRole('dialog', { name: 'Mend the outline' });
    const stage = brush.getByRole('application', { name: /The photo/ });
    await page.getByTestId('outline').first().waitFor();
    await shot('the brush');
    const answered = async (end: string, act: () => Promise<unknown>) => {
      const answer = page.waitForResponse((one) => one.url().endsWith(end));
      await act();
      await answer;
    };
    const [x, y] = view.report?.ball?.centrePx ?? [0, 0];
    const left = Math.min(...view.outlinePx.filter((at) => Math.abs(at[1] - y) < 40).map((at) => at[0]));
    if (!(left < x)) throw new RangeError('Expected an outline at the left of the ball’s middle');
    await brush.getByRole('button', { name: 'Remove', exact: true }).click();
    await answered('/strokes', () =>
      paintByMouse(page, stage, [
        [left - 20, y],
        [left + 60, y],
      ]),
    );
    await page
      .getByText(/roundness \d+/i)
      .first()
      .waitFor();
    await shot('a stroke that removes');
    await answered('/strokes', () => brush.getByRole('button', { name: 'Undo', exact: true }).click());
    await shot('the stroke undone');
    await brush.getByRole('button', { name: 'Cancel', exact: true }).click();
    await stage.waitFor({ state: 'detached' });

    await openCorrections(page);
    await page.getByRole('button', { name: 'Set rim and axis' }).click();
    const tool = page.getByRole('dialog', { name: 'Set the rim and the axis' });
    await tool.getByRole('button', { name: 'Left end of the rim', exact: true }).focus();
    await shot('the rim’s ends');
    await answered('/rim', () => page.keyboard.press('Shift+ArrowLeft'));
    await shot('the rim moved');
    await tool.getByRole('button', { name: 'Done', exact: true }).click();
    const hand = page.getByRole('region', { name: 'Set by hand' });
    await hand.scrollIntoViewIfNeeded();
    await shot('said to be set by hand');
    await answered('/rim', () => hand.getByRole('button', { name: 'Take the rim as it was found' }).click());
    await hand.waitFor({ state: 'detached' });
  },
};
