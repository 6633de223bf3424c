import { headed, openPlant } from './finding.ts';
import type { GrowerTask } from './grower-task.ts';

/** A page of A4 within margins of 12 mm, at 96 px an inch. */
const A4_PX = { width: 703, height: 1032 } as const;

export const workACutList: GrowerTask = {
  key: 'work-a-cut-list',
  title: 'Working through a cut list: tick, note, print',
  bench: 'sample plants',
  async run({ page, appUrl, shot }) {
    await openPlant(page, appUrl, 'Old regal');
    await page.getByRole('link', { name: 'Cut list', exact: true }).click();
    await headed(page, 'Cut list');
    // The week after the hard stop: bare stems of many lengths.
    const sittings = page.getByLabel('From the photos of');
    // Dates are written in the reader's manner, so it is found by a part of its words.
    const ofThatWeek = sittings.locator('option', { hasText: '27 Sep' });
    await sittings.selectOption(await ofThatWeek.getAttribute('value'));
    const row = (number: number) =>
      page
        .getByRole('listitem')
        .filter({ has: page.getByRole('button', { name: new RegExp(`^Cut ${number}:`) }) });
    await row(1).waitFor();
    await shot('the list');
    await row(1).getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText(/^1 of \d+ done\./).waitFor();
    await shot('one cut done');
    await row(3).getByRole('button', { name: 'Write a note' }).click();
    await page.getByLabel('Note on cut 3').fill('Carries the best bud.');
    await shot('a note on a cut');
    await row(3).getByRole('button', { name: 'Keep', exact: true }).click();
    await row(3).getByRole('button', { name: 'Skip', exact: true }).click();
    await row(3).getByText('Carries the best bud.').waitFor();
    await shot('a cut skipped');
    const window = page.viewportSize();
    await page.setViewportSize(A4_PX);
    await page.emulateMedia({ media: 'print' });
    await page.getByTestId('printed-list').waitFor();
    await shot('on paper');
    await page.emulateMedia({ media: 'screen' });
    if (window) await page.setViewportSize(window);
  },
};
