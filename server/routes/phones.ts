import { type Request, type Response, Router } from 'express';
import { addressesFor, type Machine } from '../pairing/known-names.ts';
import { type Pairing, PHONE_COOKIE } from '../pairing/pairing.ts';
import { type Door, type DoorCode, type PhoneList, phoneFormSchema } from '../schemas/phones.ts';
import type { Services } from '../services.ts';
import { phonesLetIn } from '../store/phones.ts';
import { isAtDesk, onlyAtDesk } from './door.ts';
import { noSuch, RequestProblem, sent } from './problems.ts';

/** The longest that browsers keep a cookie. */
const KEPT_MS = 400 * 24 * 3_600_000;

/** The door: where a device stands, the code that lets it in, and the list that the desk keeps. */
export function phoneRoutes(
  { db }: Pick<Services, 'db'>,
  pairing: Pairing,
  { host, machine }: { readonly host: string; readonly machine: Machine },
): Router {
  const routes = Router();

  routes.get('/door', (request, response) => {
    const phone = pairing.phoneOf(request.headers.cookie);
    const isLetIn = phone !== null && phone.letOutAt === null;
    // Given anew each time the app is opened, so that a phone in use never has to come twice.
    if (isLetIn) giveCookie(request, response, pairing.cookieFor(phone.id));
    response.json({
      at: isAtDesk(request) ? 'desk' : isLetIn ? 'let-in' : 'outside',
      wasLetOut: phone !== null && !isLetIn,
    } satisfies Door);
  });

  routes.post('/phones', (request, response) => {
    const { code, name } = sent(phoneFormSchema, request.body);
    const outcome = pairing.letIn({ code, name, from: request.socket.remoteAddress ?? '' });
    if (outcome.ok) {
      giveCookie(request, response, outcome.cookie);
      response.status(204).end();
      return;
    }
    if (outcome.reason === 'wait') {
      const seconds = Math.ceil(outcome.waitMs / 1000);
      response.set('Retry-After', String(seconds));
      const words = `There were too many wrong codes. Wait ${waitWords(seconds)}, then try again.`;
      throw new RequestProblem(429, words, [{ pointer: '/code', detail: words }]);
    }
    const words = 'That is not the code that the desk shows now. Look again, or have a new one shown.';
    throw new RequestProblem(422, words, [{ pointer: '/code', detail: words }]);
  });

  // One phone must not let another in or out.
  routes.use(
    ['/phones', '/phones/{*rest}'],
    onlyAtDesk('Phones are let in and out at the desk. Open Rondure on the machine it runs on.'),
  );

  routes.get('/phones', (request, response) => {
    const phones = phonesLetIn(db).map(({ letOutAt: _, ...phone }) => phone);
    const addresses = addressesFor(request.socket.localPort ?? 0, host, machine);
    response.json({ addresses, phones } satisfies PhoneList);
  });

  routes.post('/phones/code', (_request, response) => {
    const { code, untilMs } = pairing.codes.show();
    response.status(201).json({ code, until: new Date(untilMs).toISOString() } satisfies DoorCode);
  });

  routes.delete('/phones/:id', (request, response) => {
    if (!pairing.setLetOut(request.params.id, true)) throw noSuch('phone');
    response.status(204).end();
  });

  routes.post('/phones/:id/restore', (request, response) => {
    if (!pairing.setLetOut(request.params.id, false)) throw noSuch('phone');
    response.status(204).end();
  });

  return routes;
}

/** Over plain http the browser would not keep a secure cookie; over https it is one. */
function giveCookie(request: Request, response: Response, cookie: string): void {
  const { origin, 'x-forwarded-proto': scheme } = request.headers;
  const secure = scheme === 'https' || (origin?.startsWith('https:') ?? false);
  response.cookie(PHONE_COOKIE, cookie, {
    httpOnly: true,
    sameSite: 'strict',
    path: '/',
    maxAge: KEPT_MS,
    secure,
  });
}

function waitWords(seconds: number): string {
  if (seconds < 90) return seconds === 1 ? '1 second' : `${seconds} seconds`;
  return `${Math.ceil(seconds / 60)} minutes`;
}
