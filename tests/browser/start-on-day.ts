import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { BrowserContext } from 'playwright-core';
import { type Day, day } from '../../core/day/day.ts';
import { openHouse } from '../../server/house.ts';
import { serve } from '../../server/serve.ts';
import type { Services } from '../../server/services.ts';

/** The product over an empty home of its own, on a day of the calendar that the test sets. */
export interface AppOnDay {
  readonly url: string;
  /** Moves server and browser to a day; pages see it when they load anew. */
  turnTo(day: string): Promise<void>;
  /** Waits until every photo is measured. */
  whenMeasured(): Promise<void>;
  stop(): Promise<void>;
}

/** The product over a home that is there, without a browser; the home stays when it stops. */
export interface ServedHome {
  readonly url: string;
  readonly services: Services;
  setDay(day: string): void;
  stop(): Promise<void>;
}

/** Starts the house in this process, since a started server takes its day from the machine's clock. */
export async function startOnDay(context: BrowserContext, first: string): Promise<AppOnDay> {
  const home = mkdtempSync(join(tmpdir(), 'rondure-browser-'));
  const served = await serveHome(home, first);
  const turnTo = async (next: string) => {
    served.setDay(next);
    await context.clock.setFixedTime(noonInTheFarEast(next));
  };
  await turnTo(first);
  return {
    url: served.url,
    turnTo,
    whenMeasured: () => served.services.queue.whenIdle(),
    async stop() {
      await served.stop();
      rmSync(home, { recursive: true, force: true });
    },
  };
}

/** Serves a home on a day of the calendar. */
export async function serveHome(home: string, first: string): Promise<ServedHome> {
  let today: Day = day(first);
  const house = openHouse(home, pino({ level: 'silent' }), { network: false, today: () => today });
  const serving = await serve(house.services, {
    host: '127.0.0.1',
    port: 0,
    webFolder: join(import.meta.dirname, '../../dist/web'),
  });
  return {
    url: serving.url,
    services: house.services,
    setDay(next) {
      today = day(next);
    },
    async stop() {
      await serving.close();
      await house.close();
    },
  };
}

/** Half past noon in New Zealand, and the same day everywhere east of Greenwich. */
export function noonInTheFarEast(day: string): Date {
  return new Date(`${day}T00:30:00Z`);
}
