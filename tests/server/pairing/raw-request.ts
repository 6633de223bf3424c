import { request } from 'node:http';

export interface RawAnswer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

/** A request with just these headers: fetch adds some and forbids others. */
export function rawRequest(
  url: string,
  path: string,
  {
    method = 'GET',
    headers = {},
    json,
  }: { readonly method?: string; readonly headers?: Record<string, string>; readonly json?: unknown } = {},
): Promise<RawAnswer> {
  const body = json === undefined ? '' : JSON.stringify(json);
  const typed = json === undefined ? headers : { 'content-type': 'application/json', ...headers };
  return new Promise((resolve, reject) => {
    const sent = request(url + path, { method, headers: typed }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part) => parts.push(part));
      response.on('error', reject);
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts).toString(),
        }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });
}
