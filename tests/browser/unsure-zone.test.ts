import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { View } from '../../server/schemas/sitting.ts';
import { contains } from '../../web/src/mend/zone-dabs.ts';
import { measuredSample } from './measured-sample.ts';
import { openBrowser } from './open-browser.ts';
import { openCorrections } from './open-corrections.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

/** The sample bench is being measured at the same time. */
const PATIENCE_MS = 180_000;

/**
 * Whether a sample photo has an unsure zone is the cut's affair and may change with it, so one is laid on the
 * way to the screen; what the answers to it do to the outline is the server's own work.
 */
describe('a grower answers for an unsure zone', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let opened: View;
  let plantId: string;
  let zone: View['drawing']['unsure'][number];

  beforeAll(async () => {
    app = await startApp();
    browser = await openBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    ({ view: opened, plantId } = await measuredSample(app.url));
    zone = zoneAtTop(opened);
    // However many whole sittings are asked for.
    await page.route(new RegExp(`/api/plants/${plantId}(\\?|$)`), async (route) => {
      const answer = await route.fetch();
      const body: PlantPage = await answer.json();
      const views = body.sittings.flatMap((sitting) => sitting.views);
      const view = views.find(({ id }) => id === opened.id);
      if (view && view.strokes.length === 0) {
        view.drawing = { ...view.drawing, unsure: [zone] };
      }
      await route.fulfill({ response: answer, json: body });
    });
    await page.goto(`${app.url}/plants/${plantId}`);
  }, PATIENCE_MS);

  afterAll(async () => {
    await page?.unrouteAll({ behavior: 'ignoreErrors' });
    await browser?.close();
    await app?.stop();
  });

  /** Taps and waits for the outline that comes of it. */
  async function strokesAnswer(tap: () => Promise<unknown>): Promise<View> {
    const answer = page.waitForResponse((one) => one.url().endsWith('/strokes'));
    await tap();
    return (await answer).json();
  }

  it(
    'on the photo: hears what it is, says no, and takes it back',
    async () => {
      await page.getByRole('button', { name: /^Unsure zone\./ }).tap();
      await page
        .getByText(
          'May be leaf, may not: about 60 % leaf. It is counted as canopy; the plus-minus includes it.',
        )
        .waitFor();
      const view = await strokesAnswer(() => page.getByRole('button', { name: 'No', exact: true }).tap());
      expect(view.strokes.every(({ kind }) => kind === 'remove')).toBe(true);
      expect(contains(opened.outlinePx, middleOf(zone))).toBe(true);
      expect(contains(view.outlinePx, middleOf(zone))).toBe(false);
      const back = await strokesAnswer(() => undoOf(page, 'The zone is left out.').tap());
      expect(back.strokes).toEqual([]);
      expect(back.outlinePx).toEqual(opened.outlinePx);
    },
    PATIENCE_MS,
  );

  it(
    'in the mending tool with three taps once it is unfolded: Mend the outline, Yes, Done',
    async () => {
      await page.getByRole('button', { name: /^Unsure zone\./ }).waitFor();
      await openCorrections(page);
      await page.getByRole('button', { name: 'Mend the outline' }).tap();
      const tool = page.getByRole('dialog', { name: 'Mend the outline' });
      const view = await strokesAnswer(() => tool.getByRole('button', { name: 'Yes', exact: true }).tap());
      expect(view.strokes.every(({ kind }) => kind === 'keep')).toBe(true);
      expect(contains(view.outlinePx, middleOf(zone))).toBe(true);
      await tool.getByRole('button', { name: 'Done', exact: true }).tap();
      await page.getByRole('button', { name: 'The outline is right', exact: true, pressed: true }).waitFor();
    },
    PATIENCE_MS,
  );
});

/** A round zone on the canopy's upper edge, half in and half out. */
function zoneAtTop({ outlinePx }: View): View['drawing']['unsure'][number] {
  const top = outlinePx.reduce((least, point) => (point[1] < least[1] ? point : least));
  const radiusPx = 30;
  return {
    outlinePx: Array.from({ length: 24 }, (_, i) => [
      top[0] + radiusPx * Math.cos((i * Math.PI) / 12),
      top[1] + radiusPx * 0.8 + radiusPx * Math.sin((i * Math.PI) / 12),
    ]),
    inCanopy: true,
    chance: 0.6,
    areaPx: Math.PI * radiusPx ** 2,
  };
}

function middleOf({ outlinePx }: View['drawing']['unsure'][number]): readonly [number, number] {
  const sum = outlinePx.reduce(([sumX, sumY], [x, y]) => [sumX + x, sumY + y], [0, 0]);
  return [sum[0] / outlinePx.length, sum[1] / outlinePx.length];
}
