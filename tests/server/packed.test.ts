import { describe, expect, it } from 'vitest';
import { openBench } from './fixtures/open-bench.ts';

describe('what the server sends', () => {
  it('is packed where it is text', async () => {
    const { send } = await openBench();
    const answer = await send('GET', '/api/openapi.json');
    expect(answer.headers.get('content-encoding')).toMatch(/^(br|gzip)$/);
    expect(answer.body.openapi).toMatch(/^3\.1/);
  });

  it('is not packed in the stream of events, whose first line comes at once', async () => {
    const { url } = await openBench();
    const stop = new AbortController();
    const response = await fetch(`${url}/api/events`, { signal: stop.signal });
    expect(response.headers.get('content-encoding')).toBeNull();
    const { value } = await (response.body as ReadableStream<Uint8Array>).getReader().read();
    expect(new TextDecoder().decode(value)).toContain('retry: 2000');
    stop.abort();
  });
});
