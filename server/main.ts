// Starts Rondure on this machine: opens the store, lays out the sample bench when it is new, and serves.
import { join } from 'node:path';
import pino from 'pino';
import { EnvironmentUnusable, readEnvironment } from './environment.ts';
import { type House, openHouse } from './house.ts';
import { loadSamples, readSeason, SamplesMissing } from './samples/load-samples.ts';
import { AddressUnusable, serve } from './serve.ts';
import { dataHomePath, HomeUnusable } from './store/data-home.ts';
import { StoreTooNew } from './store/migrate.ts';
import { allPlants } from './store/plants.ts';

const ROOT = join(import.meta.dirname, '..');

/** Faults of the place where Rondure is started: their sentence is for whoever starts it. */
const CLEAR_FAULTS = [AddressUnusable, EnvironmentUnusable, HomeUnusable, StoreTooNew];

async function start(): Promise<void> {
  const environment = readEnvironment(process.env, process.argv.slice(2));
  const log = pino({ level: environment.RONDURE_LOG }, pino.destination(2));
  const house = openHouse(dataHomePath(process.env), log, {
    network: environment.RONDURE_NETWORK === 'on',
  });
  try {
    const { HOST: host, PORT: port } = environment;
    const serving = await serve(house.services, { host, port, webFolder: join(ROOT, 'dist/web') });
    const stop = async () => {
      await serving.close();
      await house.close();
      process.exit(0);
    };
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, stop);
    // Only now: whoever reads the line may stop the server at once.
    console.log(`Rondure is at ${serving.url}`);
    for (const address of serving.forPhones) console.log(`Phones in this network find it at ${address}`);
    const isNew = allPlants(house.services.db).length === 0;
    if (isNew && environment.RONDURE_SAMPLES === 'on') await layOutSamples(house);
  } catch (fault) {
    await house.close();
    throw fault;
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

start().catch((fault: unknown) => {
  const clear = CLEAR_FAULTS.some((kind) => fault instanceof kind);
  console.error(clear && fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
