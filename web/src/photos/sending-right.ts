import { keptDatabase } from '../kept/kept-database.ts';
import { freshKey } from './fresh-key.ts';

/** How long a page may send before it has to say that it is still there. */
const LEASE_MS = 15_000;
const OWNER = freshKey();

/** Says that the page still sends; called with each bit that has gone. */
export type StillHere = () => void;

/**
 * Runs `send` while no other page of this browser sends. Where there are Web Locks it waits for its turn. Over
 * plain http, as in a home network, browsers have none, and a lease in the store stands in: then it resolves
 * with `false`, without running `send`, when another page holds it. A page that was put to sleep may outlive
 * its lease; the server knows a photo that comes twice.
 */
export async function withSendingRight(send: (stillHere: StillHere) => Promise<void>): Promise<boolean> {
  if ('locks' in navigator && navigator.locks) {
    await navigator.locks.request('rondure-sending', () => send(() => {}));
    return true;
  }
  return withLease(send);
}

async function withLease(send: (stillHere: StillHere) => Promise<void>): Promise<boolean> {
  const taken = await takeLease().catch(() => 'no store' as const);
  if (taken === 'held by another') return false;
  let renewedMs = Date.now();
  const renew = () => {
    if (Date.now() - renewedMs < LEASE_MS / 3) return;
    renewedMs = Date.now();
    void takeLease().catch(() => {});
  };
  const clock = setInterval(renew, LEASE_MS / 3);
  // A page that is left lets the next one begin at once, if the browser still lets it say so.
  const leave = () => void leaveLease().catch(() => {});
  window.addEventListener('pagehide', leave);
  try {
    await send(renew);
  } finally {
    clearInterval(clock);
    window.removeEventListener('pagehide', leave);
    await leaveLease().catch(() => {});
  }
  return true;
}

async function takeLease(): Promise<'taken' | 'held by another'> {
  const { store, done } = (await keptDatabase()).transaction('leases', 'readwrite');
  const now = Date.now();
  const held = await store.get('sending');
  // A clock that was set back must not hold the right for ever.
  const free = !held || held.owner === OWNER || held.untilMs <= now || held.untilMs > now + LEASE_MS;
  if (free) await store.put({ id: 'sending', owner: OWNER, untilMs: now + LEASE_MS });
  await done;
  return free ? 'taken' : 'held by another';
}

async function leaveLease(): Promise<void> {
  const { store, done } = (await keptDatabase()).transaction('leases', 'readwrite');
  const held = await store.get('sending');
  if (held?.owner === OWNER) await store.delete('sending');
  await done;
}
