import type { Request, RequestHandler } from 'express';
import { isLoopback } from '../pairing/known-names.ts';
import type { Pairing } from '../pairing/pairing.ts';
import { hostName } from './guards.ts';
import { RequestProblem } from './problems.ts';

/** What a proxy adds when it passes on a request that came from somewhere else. */
const PASSED_ON = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'];

/**
 * Whether a request comes from the machine itself: over loopback, under a loopback name (a name of the
 * network could be anyone's) and not passed on by a proxy.
 */
export function isAtDesk(request: Request): boolean {
  const name = hostName(request);
  return (
    isLoopback(request.socket.remoteAddress ?? '') &&
    name !== null &&
    isLoopback(name) &&
    !PASSED_ON.some((header) => header in request.headers)
  );
}

/** What is open to a device before it is let in: the door itself, and the calendar, whose address is a key of its own. */
function isOpenToAll({ method, path }: Request): boolean {
  if (method === 'POST') return path === '/phones';
  return (
    (method === 'GET' || method === 'HEAD') && (path === '/door' || /^\/calendar\/[^/]+\.ics$/.test(path))
  );
}

/** Lets in the desk and the phones on the list; a phone that is let out loses its open connections too. */
export function onlyLetIn(pairing: Pairing): RequestHandler {
  return (request, response, next) => {
    if (isAtDesk(request) || isOpenToAll(request)) return next();
    const phone = pairing.phoneOf(request.headers.cookie);
    if (phone === null || phone.letOutAt !== null) {
      throw new RequestProblem(
        401,
        phone === null
          ? 'This device has not been let in yet. Enter the code that the desk shows under Phones.'
          : 'This device was let out at the desk. Enter a new code to come in again.',
      );
    }
    pairing.noteSeen(phone);
    const stop = pairing.watch(phone.id, () => request.socket.destroy());
    response.on('close', stop);
    next();
  };
}

/** What is for the desk alone; `words` say so to a phone. */
export function onlyAtDesk(words: string): RequestHandler {
  return (request, _response, next) => {
    if (isAtDesk(request)) return next();
    throw new RequestProblem(403, words);
  };
}
