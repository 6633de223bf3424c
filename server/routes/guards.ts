import type { RequestHandler } from 'express';
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
export const securityHeaders: RequestHandler = (_request, response, next) => {
  response.set({
    'Content-Security-Policy': CONTENT_POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
  next();
};

const LOOPBACK_NAMES = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Whether an address is this machine's own loopback. */
export function isLoopback(host: string): boolean {
  return host === '::1' || LOOPBACK_NAMES.has(host) || /^127(\.\d{1,3}){3}$/.test(host);
}

/**
 * On a loopback address only pages that name the machine so may ask: a foreign name that was made to point
 * here (DNS rebinding) is turned away.
 */
export const onlyLocalHost: RequestHandler = (request, _response, next) => {
  const name = hostName(`http://${request.headers.host ?? ''}`);
  if (name !== null && (LOOPBACK_NAMES.has(name) || isLoopback(name))) return next();
  throw new RequestProblem(403, 'This server answers to localhost only. Open it under that name.');
};

/** Another site's page may not change anything here, not even by a form that needs no permission. */
export const onlyOwnPages: RequestHandler = (request, _response, next) => {
  const { origin } = request.headers;
  const reading = request.method === 'GET' || request.method === 'HEAD';
  if (reading || origin === undefined || origin === `${request.protocol}://${request.headers.host}`) {
    return next();
  }
  throw new RequestProblem(403, 'Changes are taken from the pages of this server only.');
};

function hostName(url: string): string | null {
  try {
    return new URL(url).hostname;
  } catch {
    return null;
  }
}
