import type { Request, RequestHandler } from 'express';
import { isLoopback, isOwnName, type Machine } from '../pairing/known-names.ts';
import { RequestProblem } from './problems.ts';

/** Everything comes from this server; Plot and the component library set inline styles. */
const CONTENT_POLICY = [
  "default-src 'self'",
  "img-src 'self' blob: data:",
  "style-src 'self' 'unsafe-inline'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers that keep a page of this server to itself. */
export const securityHeaders: RequestHandler = (request, response, next) => {
  response.set({
    'Content-Security-Policy': CONTENT_POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
  // Browsers heed it on secure pages only, and complain elsewhere.
  const isSecure = isLoopback(hostName(request) ?? '') || request.headers['x-forwarded-proto'] === 'https';
  if (isSecure) response.set('Cross-Origin-Opener-Policy', 'same-origin');
  next();
};

/** The name in a request's Host header, as in an address; `null` when there is none that can be read. */
export function hostName({ headers }: Pick<Request, 'headers'>): string | null {
  return addressOf(`http://${headers.host ?? ''}`)?.hostname ?? null;
}

/**
 * Only pages that name this machine may ask: a foreign name that was made to point here (DNS rebinding) is
 * turned away. `boundTo` is the address that the server listens on.
 */
export function onlyKnownNames(boundTo: string, machine: Machine): RequestHandler {
  return (request, _response, next) => {
    const name = hostName(request);
    if (name !== null && isOwnName(name, boundTo, machine)) return next();
    throw new RequestProblem(
      403,
      isLoopback(boundTo)
        ? 'This server answers to localhost only. Open it under that name.'
        : 'This server does not answer to that name. Open it under one of the addresses that the desk shows under Phones.',
    );
  };
}

/**
 * Another site's page may change nothing here, not even by a form that needs no permission, and may load
 * nothing of the interface. Browsers name the sender: in `Origin` with every change, and in `Sec-Fetch-Site`
 * where the connection counts as secure.
 */
export const onlyOwnPages: RequestHandler = (request, _response, next) => {
  const reading = request.method === 'GET' || request.method === 'HEAD';
  if (reading ? isOwnReading(request) : isOwnChange(request)) return next();
  throw new RequestProblem(
    403,
    reading
      ? 'Only the pages of this server may read here.'
      : 'Changes are taken from the pages of this server only.',
  );
};

function isOwnReading({ headers, path }: Request): boolean {
  const site = headers['sec-fetch-site'];
  // A link from elsewhere may open a page; nothing of it is then in the other site's hands.
  if (headers['sec-fetch-mode'] === 'navigate' || !/^\/api\//i.test(path)) return true;
  return site === undefined || site === 'same-origin' || site === 'none';
}

function isOwnChange({ headers }: Request): boolean {
  const { origin, host } = headers;
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin') return false;
  if (origin === undefined) return !isFromBrowser(headers);
  const from = addressOf(origin);
  // The scheme is left open: a proxy in front may speak https.
  return from !== null && from.host === addressOf(`${from.protocol}//${host ?? ''}`)?.host;
}

/** A program without a screen sends none of these; a browser that hides where a change comes from is not trusted. */
function isFromBrowser(headers: Request['headers']): boolean {
  return (
    headers['sec-fetch-site'] !== undefined ||
    headers.cookie !== undefined ||
    headers.referer !== undefined ||
    (headers['user-agent'] ?? '').startsWith('Mozilla/')
  );
}

function addressOf(text: string): URL | null {
  try {
    return new URL(text);
  } catch {
    return null;
  }
}
