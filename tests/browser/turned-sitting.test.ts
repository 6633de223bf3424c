import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page, Route } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images/window-regal');
/** Other tests share the machine. */
const PATIENCE_MS = 240_000;

/** The sample sitting's photo at a turn, stored anew: the store would not keep a photo twice. */
async function shot(turn: 0 | 45 | 90 | 135, name: string) {
  const file = turn === 0 ? '2026-10-11.jpg' : `2026-10-11-turn${String(turn).padStart(3, '0')}.jpg`;
  const buffer = await sharp(readFileSync(join(SAMPLES, file)))
    .keepExif()
    .jpeg({ quality: 91 })
    .toBuffer();
  return { name, mimeType: 'image/jpeg', buffer };
}

/**
 * Names the swap as core would. Whether core sees one in these outlines is its own tests' matter; here it is about the words, the
 * repair and its undo, so the fault stands in the answer for as long as the two turns do.
 */
async function tellSwapped(route: Route): Promise<void> {
  if (route.request().method() !== 'GET') return route.continue();
  const answer = await route.fetch();
  const page = (await answer.json()) as PlantPage;
  const [sitting] = page.sittings;
  const at = (fileName: string) => sitting?.views.find((view) => view.fileName === fileName);
  const [one, other] = [at('IMG_9.jpg'), at('IMG_10.jpg')];
  const swapped = one?.turnDeg === 45 && other?.turnDeg === 135;
  const [view = 0, otherView = 0] = [one, other].map(
    (each) => sitting?.turnedViewIds.indexOf(each?.id ?? '') ?? 0,
  );
  const fault = {
    kind: 'views-swapped',
    view,
    otherView,
    fitsTurnDeg: null,
    asideMm: null,
    from: 'outlines',
    words: `Views ${view + 1} and ${otherView + 1} look swapped: each outline fits at the other’s turn. Swap their turns.`,
  };
  if (sitting?.turned) Object.assign(sitting.turned, { faults: swapped ? [fault] : [] });
  await route.fulfill({ response: answer, json: page });
}

describe('a grower photographs a plant from all round', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let plant: Plant;
  const faults: string[] = [];

  const plantPage = async () =>
    (await (await fetch(`${app.url}/api/plants/${plant.id}`)).json()) as PlantPage;
  const turnsKept = async () =>
    (await plantPage()).sittings[0]?.views.map(({ turnDeg }) => turnDeg).sort((a, b) => (a ?? 0) - (b ?? 0));
  const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

  beforeAll(async () => {
    app = await startApp('off');
    // Chromium's own software renderer lends WebGL where there is no graphics card.
    browser = await openBrowser(['--use-angle=swiftshader', '--enable-unsafe-swiftshader']);
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      reducedMotion: 'reduce',
    });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
    const answer = await fetch(`${app.url}/api/plants`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Sill regal', kind: 'regal', rimMm: 130 }),
    });
    plant = (await answer.json()) as Plant;
  }, PATIENCE_MS);

  afterAll(async () => {
    await page?.unrouteAll({ behavior: 'ignoreErrors' });
    await browser?.close();
    await app?.stop();
  });

  it(
    'is led to the first shot, and takes another one first by tapping it on the drawing',
    async () => {
      await page.goto(`${app.url}/plants/${plant.id}/turned`);
      await page.getByRole('heading', { name: 'Turn the mark to the camera' }).waitFor();
      await page.getByText('Shot 1 of 4').waitFor();
      await page.getByRole('button', { name: /^Shot 3: A quarter turn clockwise/ }).tap();
      await page.getByText('Shot 3 of 4').waitFor();
      await page.getByText('the mark points to 9 o’clock').waitFor();
      expect(await overflow()).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'sees what came of the shot at once, and is asked for the next open one',
    async () => {
      await page.getByLabel('Take this shot').setInputFiles(await shot(90, 'IMG_1.jpg'));
      await page.getByText('Shot 1 of 4').waitFor();
      await page.getByRole('listitem').filter({ hasText: '3. A quarter turn clockwise' }).waitFor();
      await page
        .getByRole('listitem')
        .filter({ hasText: '3. A quarter turn clockwise' })
        .getByText(/Measured: roundness \d+/)
        .waitFor();
      expect(await turnsKept()).toEqual([90]);
    },
    PATIENCE_MS,
  );

  it(
    'chooses three files at once, which go to the open turns by their names',
    async () => {
      await page
        .getByLabel('From files')
        .setInputFiles([
          await shot(135, 'IMG_9.jpg'),
          await shot(0, 'IMG_8.jpg'),
          await shot(45, 'IMG_10.jpg'),
        ]);
      await page.getByRole('heading', { name: 'Every shot is in' }).waitFor();
      await expect.poll(turnsKept, { timeout: PATIENCE_MS }).toEqual([0, 45, 90, 135]);
    },
    PATIENCE_MS,
  );

  it(
    'is told that two of them are swapped, and swaps them with one tap',
    async () => {
      await page.route(`**/api/plants/${plant.id}`, tellSwapped);
      await page.reload();
      await page.getByText(/look swapped: each outline fits/).waitFor();
      await page.getByRole('button', { name: /^Swap the turns of views/ }).tap();
      await page.getByText(/The turns of views \d and \d are swapped\./).waitFor();
      await page.getByText(/look swapped/).waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'takes the repair back, and puts it right by hand instead',
    async () => {
      await undoOf(page, /The turns of views \d and \d are swapped\./).tap();
      await page.getByText(/look swapped: each outline fits/).waitFor();
      for (const [from, to] of [
        ['2. An eighth of a turn clockwise', 'unknown'],
        ['4. Three eighths of a turn clockwise', '45'],
        ['Turn not known', '135'],
      ] as const) {
        await page
          .getByRole('button', { name: `Correct: ${from}` })
          .first()
          .tap();
        await page.getByLabel('Turn of the pot').selectOption(to);
        await page.getByRole('button', { name: 'Keep', exact: true }).tap();
        await page.getByRole('dialog').waitFor({ state: 'detached' });
      }
      await page.getByText(/look swapped/).waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'reads what so many views can and cannot tell, and finds the collar for its pot',
    async () => {
      const count = page.getByRole('region', { name: 'How many views' });
      await count.getByText('2', { exact: true }).tap();
      await page.getByText(/a wrong turn cannot be noticed/).waitFor();
      await count.getByText('4 (usual)').tap();
      const collar = page.getByRole('link', { name: /The collar for 130 mm/ });
      await expect.poll(() => collar.getAttribute('href')).toBe('/api/turn-collar.pdf?rimMm=130&paper=A4');
    },
    PATIENCE_MS,
  );

  it(
    'sees the plan from above, and asks a side by key',
    async () => {
      await page.getByRole('link', { name: /See the plan and the solid/ }).tap();
      const clock = page.getByTestId('plan-clock');
      await clock.waitFor();
      // The plan follows as soon as the last view is joined to the others.
      await expect
        .poll(() => page.getByTestId('silhouette-end').count(), { timeout: PATIENCE_MS })
        .toBeGreaterThanOrEqual(8);
      await expect
        .poll(() => clock.getAttribute('aria-label'))
        .toMatch(/Most reach: the \d+ o’clock side, \d+ mm/);
      // The plant of these photos was made to lean to its window.
      await page.getByTestId('lean-arrow').waitFor();
      const slider = page.getByLabel('Ask a side: tap the plan, or slide');
      await slider.focus();
      await page.keyboard.press('Home');
      await page.getByText(/^The 6 o’clock side reaches \d+ mm/).waitFor();
      for (let step = 0; step < 6; step++) await page.keyboard.press('ArrowRight');
      await page.getByText(/^The 9 o’clock side reaches \d+ mm/).waitFor();
      expect(await overflow()).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'opens a number to its meaning, bias and source',
    async () => {
      await page.getByText('Volume', { exact: true }).tap();
      await page.getByText(/The hull is never smaller than the plant/).waitFor();
      await page.getByText(/Laurentini \(1994\)/).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'turns the solid by keys and by mouse',
    async () => {
      await page.getByRole('button', { name: 'Show the solid' }).tap();
      const solid = page.getByRole('application', { name: /as a solid/ });
      await page.getByTestId('solid').waitFor();
      await page.getByText(/^The 6 o’clock side is in front/).waitFor();
      await solid.focus();
      for (let step = 0; step < 6; step++) await page.keyboard.press('ArrowRight');
      await page.getByText(/^The 3 o’clock side is in front/).waitFor();
      await page.getByRole('button', { name: 'From above', exact: true }).click();
      await page.getByText(/^Seen from above, the 6 o’clock side/).waitFor();
      const box = await solid.boundingBox();
      if (!box) throw new TypeError('Expected the solid to have a place but received none');
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 100, y - 80, { steps: 5 });
      await page.mouse.up();
      await page.getByText(/o’clock side is in front, seen from \d+° above the level/).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'writes down a turn with one tap, takes it back, and changes the rhythm',
    async () => {
      await page.getByRole('button', { name: 'Say which side faces the light' }).tap();
      await page.getByRole('radio', { name: '3 o’clock', exact: true }).check();
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await page.getByText('The 3 o’clock side faces the light since today.').waitFor();
      await page.getByRole('button', { name: 'Turned a quarter clockwise today' }).tap();
      await page.getByText('The 12 o’clock side faces the light since today.').waitFor();
      await undoOf(page, 'Written down: the 12 o’clock side faces the light from today.').tap();
      await page.getByText('The 3 o’clock side faces the light since today.').waitFor();
      await page.getByRole('button', { name: 'Change the rhythm' }).tap();
      await page.getByLabel('Days from turn to turn').fill('10');
      await page.getByLabel('An eighth of a turn').check();
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await page.getByText('An eighth of a turn clockwise every 10 days.').waitFor();
      expect((await plantPage()).plant.turnRhythm).toEqual({ everyDays: 10, byDeg: 45, way: 'clockwise' });
    },
    PATIENCE_MS,
  );

  it(
    'has a picture of the solid where the browser lends no WebGL',
    async () => {
      const bare = await context.newPage();
      await bare.addInitScript(() => {
        const given = HTMLCanvasElement.prototype.getContext;
        HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string) {
          return kind.startsWith('webgl') ? null : given.call(this, kind as '2d');
        } as typeof given;
      });
      await bare.goto(`${app.url}/plants/${plant.id}`);
      await bare.getByRole('button', { name: 'Show the solid' }).tap();
      const still = bare.getByTestId('still');
      await still.waitFor();
      await bare.getByText(/lends no WebGL, so it is a picture/).waitFor();
      const painted = () =>
        still.evaluate((canvas: HTMLCanvasElement) => {
          const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
          let count = 0;
          for (let k = 3; k < pixels.length; k += 4) if ((pixels[k] as number) > 0) count++;
          return count / (canvas.width * canvas.height);
        });
      await expect.poll(painted).toBeGreaterThan(0.1);
      await bare.close();
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
