// Ten tasks of a grower in pictures, on phone and desk, in light and dark: `npm run screens -- --out DIR`.
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser } from 'playwright-core';
import { openBrowser } from '../browser/open-browser.ts';
import { type ServedHome, serveHome } from '../browser/start-on-day.ts';
import { ALL_TASKS } from '../browser/tasks/all-tasks.ts';
import {
  COMBINATIONS,
  type Combination,
  combinationName,
  openCombination,
} from '../browser/tasks/combination.ts';
import type { GrowerTask } from '../browser/tasks/grower-task.ts';
import { layBench, setOut, TODAY } from '../browser/tasks/sample-bench.ts';
import { type Picture, screensPage } from './screens-page.ts';
import { takePicture } from './take-picture.ts';
import { walkInLanguage } from './walk-in-language.ts';

const { values } = parseArgs({
  options: {
    /** Where the page and its pictures go. */
    out: { type: 'string', default: 'screens' },
    /** Only the task of that key. */
    only: { type: 'string' },
    /** Only one combination, for example "phone, dark". */
    on: { type: 'string' },
    /** The whole length of each page, not the window alone. */
    whole: { type: 'boolean', default: false },
    /** A walk over all screens in that language instead of the tasks: de or nl. */
    language: { type: 'string' },
    /** A folder in which the measured bench is kept for the next run. */
    bench: { type: 'string' },
  },
});

/** A step that never comes ends its task, which is then told as broken off. */
const PATIENCE_MS = 60_000;

const pictures: Picture[] = [];

/** The bench, measured once; each combination gets a copy of its own. */
async function measuredBench(): Promise<string> {
  const home = values.bench ?? mkdtempSync(join(tmpdir(), 'rondure-screens-'));
  if (existsSync(join(home, 'laid-out'))) return home;
  const served = await layBench(home);
  await served.stop();
  writeFileSync(join(home, 'laid-out'), '');
  return home;
}

async function doTask(browser: Browser, served: ServedHome, combination: Combination, task: GrowerTask) {
  await setOut(served.url, task.bench === 'sample plants');
  const context = await openCombination(browser, combination);
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  const names = { task: task.key, combination: combinationName(combination) };
  let taken = 0;
  const shot = async (step: string) => {
    taken += 1;
    const end = `${String(taken).padStart(2, '0')}-${names.combination.replace(', ', '-')}`;
    const file = `${task.key}-${end}.webp`;
    await takePicture(page, join(values.out, file), values.whole);
    pictures.push({ ...names, step, file });
  };
  try {
    await task.run({ page, appUrl: served.url, shot });
  } catch (fault) {
    console.error(`${task.title} (${names.combination}) broke off:`, fault);
    await shot('broke off here');
    process.exitCode = 1;
  } finally {
    await context.close();
  }
}

async function doAll(browser: Browser, bench: string, combination: Combination): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'rondure-screens-'));
  cpSync(bench, home, { recursive: true });
  const served = await serveHome(home, TODAY);
  try {
    if (values.language)
      pictures.push(...(await walkInLanguage(browser, served.url, values.language, values.out)));
    else {
      for (const task of ALL_TASKS) {
        if (values.only === undefined || values.only === task.key)
          await doTask(browser, served, combination, task);
      }
    }
  } finally {
    await served.stop();
    rmSync(home, { recursive: true, force: true });
  }
}

mkdirSync(values.out, { recursive: true });
const bench = await measuredBench();
const browser = await openBrowser();
try {
  const wanted = COMBINATIONS.filter((one) => values.on === undefined || combinationName(one) === values.on);
  for (const combination of values.language ? wanted.slice(0, 1) : wanted) {
    await doAll(browser, bench, combination);
  }
} finally {
  await browser.close();
  if (!values.bench) rmSync(bench, { recursive: true, force: true });
}
const page = join(values.out, 'index.html');
writeFileSync(page, screensPage(pictures));
console.log(`${pictures.length} pictures, to leaf through in ${page}`);
