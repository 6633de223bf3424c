import { createKeptStore } from '../parts/store.ts';

/** So many answers are remembered; only the newest sitting is ever asked about. */
const MOST = 200;

/** Sittings that the grower said are not limp, so that nobody asks again; kept on this device. */
export const firmSittings = createKeptStore<readonly string[]>(
  'rondure.firm-sittings',
  [],
  (kept): kept is readonly string[] => Array.isArray(kept) && kept.every((id) => typeof id === 'string'),
);

export function rememberFirm(sittingId: string, isFirm: boolean): void {
  const others = firmSittings.read().filter((id) => id !== sittingId);
  firmSittings.write(isFirm ? [...others, sittingId].slice(-MOST) : others);
}
