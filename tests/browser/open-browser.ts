import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { slowDown } from './slow-down.ts';

const SYSTEM_CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Keeps Chromium from calling anyone: the tests only ever speak to 127.0.0.1. */
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * The packaged browser draws WebGL in software. The package's own switches are left out: they turn the web's
 * security off, and then no page says where it comes from.
 */
const WITHOUT_GRAPHICS_CARD = [
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
  '--no-zygote',
];

/**
 * A headless Chromium: the system's when there is one, else the one that the npm package ships, so that a
 * bare machine can run browser tests straight after `npm ci`. `extra` are further switches of Chromium.
 * `RONDURE_SLOW=4` makes its pages that many times slower and their answers late.
 */
export async function openBrowser(extra: readonly string[] = []): Promise<Browser> {
  const browser = await launch(extra);
  const times = Number(process.env.RONDURE_SLOW ?? 1);
  if (!(times >= 1)) throw new RangeError(`Expected RONDURE_SLOW from 1 on but received ${times}`);
  return times > 1 ? slowDown(browser, times) : browser;
}

async function launch(extra: readonly string[]): Promise<Browser> {
  const wanted = [...QUIET, ...extra];
  const named = process.env.RONDURE_CHROMIUM;
  const installed = named ?? SYSTEM_CHROMIUM.find((path) => existsSync(path));
  if (installed) return chromium.launch({ executablePath: installed, args: wanted });
  const { executablePath, env } = await packagedChromium();
  return chromium.launch({ executablePath, args: [...WITHOUT_GRAPHICS_CARD, ...wanted], env });
}

/** The package unpacks its shared libraries only when it believes itself in a hosted function, so it is told so while it loads. */
async function packagedChromium() {
  const before = { ...process.env };
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs20.x';
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    const executablePath = await packaged.executablePath();
    const env: Record<string, string> = { FONTCONFIG_PATH: process.env.FONTCONFIG_PATH ?? '' };
    for (const [name, value] of Object.entries(process.env)) if (value !== undefined) env[name] = value;
    return { executablePath, env };
  } finally {
    for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
    Object.assign(process.env, before);
  }
}
