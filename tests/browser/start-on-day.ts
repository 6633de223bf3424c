import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { BrowserContext } from 'playwright-core';
import { type Day, day } from '../../core/day/day.ts';
import { openHouse } from '../../server/house.ts';
import { serve } from '../../server/serve.ts';

/** The product over an empty home of its own, on a day of the calendar that the test sets. */
export interface AppOnDay {
  readonly url: string;
  /** Moves server and browser to a day; pages see it when they load anew. */
  turnTo(day: string): Promise<void>;
  /** Waits until every photo is measured. */
  whenMeasured(): Promise<void>;
  stop(): Promise<void>;
}

/** Starts the house in this process, since a started server takes its day from the machine's clock. */
export async function startOnDay(context: BrowserContext, first: string): Promise<AppOnDay> {
  const home = mkdtempSync(join(tmpdir(), 'rondure-browser-'));
  const house = openHouse(home, pino({ level: 'silent' }), { network: false });
  let today: Day = day(first);
  const serving = await serve(
    { ...house.services, today: () => today },
    { host: '127.0.0.1', port: 0, webFolder: join(import.meta.dirname, '../../dist/web') },
  );
  const turnTo = async (next: string) => {
    today = day(next);
    // Half past noon in New Zealand, and the same day everywhere east of Greenwich.
    await context.clock.setFixedTime(new Date(`${next}T00:30:00Z`));
  };
  await turnTo(first);
  return {
    url: serving.url,
    turnTo,
    whenMeasured: () => house.services.queue.whenIdle(),
    async stop() {
      await serving.close();
      await house.close();
      rmSync(home, { recursive: true, force: true });
    },
  };
}
