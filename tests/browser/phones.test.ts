import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { onNetwork, openNetworkBrowser } from './home-network.ts';
import {
  addPlant,
  choosePhotos,
  photosOf,
  shots,
  untilIt,
  untilReadyForNoNetwork,
} from './phone-and-plant.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 180_000;
const CODE = /^\d{3} \d{3}$/;

describe('a phone in the home network, over plain http', () => {
  let app: RunningApp;
  let browser: Browser;
  let phoneContext: BrowserContext;
  let desk: Page;
  let phone: Page;
  let plantId: string;

  const waiting = (page: Page) => page.getByRole('region', { name: 'Photos that wait on this device' });
  const codeShown = async () => {
    await desk.getByRole('button', { name: /Show (a|another) code/ }).click();
    const words = await desk.getByText(CODE).textContent();
    return (words ?? '').replace(/\D/g, '');
  };

  beforeAll(async () => {
    app = await startApp('off', '0.0.0.0');
    browser = await openNetworkBrowser();
    desk = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    phoneContext = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    for (const opened of [desk.context(), phoneContext]) opened.setDefaultTimeout(PATIENCE_MS / 2);
    phone = await phoneContext.newPage();
    plantId = (await addPlant(app.url, 'Far greenhouse')).id;
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  // A test that broke off must not take the network from the next.
  beforeEach(() => phoneContext.setOffline(false));

  it(
    'finds the door, and is told beside the entry when the code is wrong',
    async () => {
      await phone.goto(onNetwork(app.url));
      expect(await phone.evaluate(() => window.isSecureContext)).toBe(false);
      await phone.getByRole('heading', { name: 'Come in with a code' }).waitFor();
      await phone.getByLabel('Code from the desk').fill('000 000');
      await phone.getByRole('button', { name: 'Come in' }).click();
      await phone.getByText(/That is not the code that the desk shows now/).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'comes in by the square of dots, and the desk sees it',
    async () => {
      await desk.goto(`${app.url}/phones`);
      const code = await codeShown();
      const square = desk.getByRole('img', { name: /A square of dots that opens http/ });
      expect(await square.locator('path').getAttribute('d')).toMatch(/^M\d/);
      await phone.goto(`${onNetwork(app.url)}/#${code}`);
      await expect.poll(() => phone.getByLabel('Code from the desk').inputValue()).toBe(code);
      await phone.getByLabel('Name of this device').fill('Green phone');
      await phone.getByRole('button', { name: 'Come in' }).click();
      await phone.getByRole('article').getByRole('link', { name: 'Far greenhouse' }).waitFor();
      expect(phone.url()).not.toContain(code);
      await desk.getByText('Green phone is let in.').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'sends what was chosen without a network once each, one page of two at a time, without Web Locks',
    async () => {
      const posts: string[] = [];
      phoneContext.on('requestfinished', (request) => {
        if (request.method() === 'POST' && request.url().endsWith('/photos')) posts.push(request.url());
      });
      await phone.goto(`${onNetwork(app.url)}/plants/${plantId}`);
      expect(await phone.evaluate(() => 'locks' in navigator)).toBe(false);
      await phone.getByRole('heading', { name: 'Far greenhouse' }).waitFor();
      await untilReadyForNoNetwork(phone);
      await phoneContext.setOffline(true);
      await choosePhotos(phone, await shots(4, 7000));
      await phone
        .getByText(/4 photos wait on this device/)
        .first()
        .waitFor();
      // Without a network no second page opens here, so the server is away until both are open.
      await phoneContext.route('**/photos', (route) => route.abort('connectionrefused'));
      await phoneContext.setOffline(false);
      const other = await phoneContext.newPage();
      await Promise.all([other.goto(onNetwork(app.url)), phone.reload()]);
      for (const page of [other, phone]) await waiting(page).waitFor();
      await phoneContext.setOffline(true);
      await phoneContext.unrouteAll({ behavior: 'wait' });
      posts.length = 0;
      // Both hear at once that the network is back.
      await phoneContext.setOffline(false);
      const names = await untilIt(
        () => photosOf(app.url, plantId),
        (all) => all.length >= 4,
      );
      expect(names).toEqual(['shot-01.jpg', 'shot-02.jpg', 'shot-03.jpg', 'shot-04.jpg']);
      for (const page of [other, phone]) await waiting(page).waitFor({ state: 'detached' });
      expect(posts).toHaveLength(4);
      await other.close();
    },
    PATIENCE_MS,
  );

  it(
    'that is let out is told so, sees no plant any more, and keeps its photos until it comes in again',
    async () => {
      await phone.goto(`${onNetwork(app.url)}/plants/${plantId}`);
      await phone.getByRole('heading', { name: 'Far greenhouse' }).waitFor();
      await untilReadyForNoNetwork(phone);
      await phoneContext.setOffline(true);
      await choosePhotos(phone, await shots(1, 8000));
      await phone
        .getByText(/1 photo waits/)
        .first()
        .waitFor();
      await desk.getByRole('button', { name: 'Let Green phone out' }).click();
      await desk.getByText('Green phone is let out.').waitFor();
      // The code that let it in is used up, whether the phone is still on the list or not.
      expect(await desk.getByText(CODE).count()).toBe(0);
      await phoneContext.setOffline(false);
      await phone.getByRole('heading', { name: 'This device was let out' }).waitFor();
      await phone.getByText(/The photos that wait on this device stay here/).waitFor();
      await waiting(phone).getByRole('img', { name: 'shot-01.jpg' }).waitFor();
      expect(await phone.getByRole('article').getByRole('link', { name: 'Far greenhouse' }).count()).toBe(0);
      const code = await codeShown();
      await phone.getByLabel('Code from the desk').fill(code);
      await phone.getByRole('button', { name: 'Come in' }).click();
      const names = await untilIt(
        () => photosOf(app.url, plantId),
        (all) => all.length >= 5,
      );
      expect(names).toHaveLength(5);
    },
    PATIENCE_MS,
  );
});
