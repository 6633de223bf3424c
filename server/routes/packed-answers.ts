import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { Request, Response } from 'express';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { rememberingAnswers } from '../store/remembering.ts';

const pack = promisify(gzip);

interface Packed {
  readonly text: Buffer;
  readonly packed: Buffer;
}

/** Answers of other days and ranges make room for one another. */
const remembered = rememberingAnswers<Packed>({ most: 6 });

/**
 * Sends an answer on all plants. Its text and its packed text are kept until something is written: of 200 plants both take longer than
 * all else once each plant's share is remembered.
 *
 * @param facts that it rests on, beside the store and its address
 */
export async function sendPacked(
  db: Database,
  { request, response }: { readonly request: Request; readonly response: Response },
  facts: () => SeasonFacts,
  reckon: () => Promise<object>,
): Promise<void> {
  const { today, fits } = facts();
  const asked = [today, fits.cameFor(null)];
  const { text, packed } = await remembered(db, { name: request.originalUrl, asked }, async () => {
    const written = jsonOf(await reckon());
    return { text: written, packed: await pack(written) };
  });
  response.type('json');
  response.vary('Accept-Encoding');
  if (request.acceptsEncodings('gzip') === 'gzip') response.set('Content-Encoding', 'gzip').send(packed);
  else response.send(text);
}

const texts = new WeakMap<object, Buffer>();
const [COMMA, OPEN, CLOSE] = [',', '[', ']'].map((sign) => Buffer.from(sign)) as [Buffer, Buffer, Buffer];

/** An answer as the bytes of its JSON; what its lists hold is written once, as long as it is the same objects. */
export function jsonOf(answer: object): Buffer {
  const parts = Object.entries(answer).filter(([, value]) => value !== undefined);
  const bytes = parts.flatMap(([key, value], at) => [
    Buffer.from(`${at === 0 ? '' : ','}${JSON.stringify(key)}:`),
    ...(Array.isArray(value) ? listBytes(value) : [Buffer.from(JSON.stringify(value))]),
  ]);
  return Buffer.concat([Buffer.from('{'), ...bytes, Buffer.from('}')]);
}

function listBytes(rows: readonly object[]): Buffer[] {
  return [OPEN, ...rows.flatMap((row, at) => (at === 0 ? [bytesOf(row)] : [COMMA, bytesOf(row)])), CLOSE];
}

function bytesOf(row: object): Buffer {
  const known = texts.get(row) ?? Buffer.from(JSON.stringify(row));
  texts.set(row, known);
  return known;
}
