// Starts Rondure on this machine: opens the store, lays out the sample bench when it is new, and serves.
import { join } from 'node:path';
import pino from 'pino';
import { type Environment, EnvironmentUnusable, readEnvironment } from './environment.ts';
import { type House, openHouse } from './house.ts';
import { loadSamples, readSeason, SamplesMissing } from './samples/load-samples.ts';
import { AddressUnusable, type Serving, serve } from './serve.ts';
import { UpgradeNotCopied } from './store/before-upgrade.ts';
import { dataHomePath, HomeUnusable } from './store/data-home.ts';
import { NoRoomForStore } from './store/database.ts';
import { HomeInUse } from './store/home-lock.ts';
import { StoreTooNew } from './store/migrate.ts';
import { allPlants } from './store/plants.ts';

const ROOT = join(import.meta.dirname, '..');

/** Faults of the place where Rondure is started: their sentence is for whoever starts it. */
const CLEAR_FAULTS = [
  AddressUnusable,
  EnvironmentUnusable,
  HomeInUse,
  HomeUnusable,
  NoRoomForStore,
  StoreTooNew,
  UpgradeNotCopied,
];

interface OpenHouse {
  readonly house: House;
  readonly serving: Serving;
  close(): Promise<void>;
}

async function start(): Promise<void> {
  const environment = readEnvironment(process.env, process.argv.slice(2));
  let open = await openAndServe(environment, environment.PORT);
  const stop = async () => {
    await open.close();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, stop);
  // Only now: whoever reads the lines may stop the server at once.
  console.log(`Rondure is at ${open.serving.url}`);
  for (const address of open.serving.forPhones) console.log(`Phones in this network find it at ${address}`);
  const isNew = allPlants(open.house.services.db).length === 0;
  if (isNew && environment.RONDURE_SAMPLES === 'on') await layOutSamples(open.house);

  /** Opens the house and serves it; with a restored store, closes it and opens it anew under the same address. */
  async function openAndServe({ HOST: host, ...wanted }: Environment, port: number): Promise<OpenHouse> {
    const log = pino({ level: wanted.RONDURE_LOG }, pino.destination(2));
    const house = openHouse(dataHomePath(process.env), log, {
      network: wanted.RONDURE_NETWORK === 'on',
      onRestored: () => void reopen().catch(tell),
    });
    try {
      const serving = await serve(house.services, { host, port, webFolder: join(ROOT, 'dist/web') });
      return {
        house,
        serving,
        async close() {
          await serving.close();
          await house.close();
        },
      };
    } catch (fault) {
      await house.close();
      throw fault;
    }
  }

  async function reopen(): Promise<void> {
    const { port } = new URL(open.serving.url);
    await open.close();
    open = await openAndServe(environment, Number(port));
  }
}

/** The bench serves without its samples too, so what is wrong with them is said and no more. */
async function layOutSamples({ services }: House): Promise<void> {
  const folder = join(ROOT, 'sample-images');
  try {
    await loadSamples(services, folder, await readSeason(folder));
  } catch (fault) {
    if (fault instanceof SamplesMissing) console.error(fault.message);
    else services.log.error({ err: fault }, 'the sample bench was not laid out whole');
  }
}

function tell(fault: unknown): void {
  const clear = CLEAR_FAULTS.some((kind) => fault instanceof kind);
  console.error(clear && fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
}

start().catch(tell);
