import { hostname } from 'node:os';
import type { Browser } from 'playwright-core';
import { openBrowser } from './open-browser.ts';

/** This machine's name in its network; over plain http a page under it does not count as secure, as on a phone. */
export const NETWORK_NAME = `${hostname().toLowerCase().split('.')[0]}.local`;

/** A browser that finds this machine by its network name, whatever name service there is. */
export function openNetworkBrowser(): Promise<Browser> {
  return openBrowser([`--host-resolver-rules=MAP ${NETWORK_NAME} 127.0.0.1`]);
}

/** The address under which a phone opens the app that says `url` at the desk. */
export function onNetwork(url: string): string {
  return `http://${NETWORK_NAME}:${new URL(url).port}`;
}
