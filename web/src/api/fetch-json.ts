import type { Problem } from '../../../server/schemas/basics.ts';
import { isOutside } from './outside.ts';

export const SERVER_AWAY =
  'Rondure’s server does not answer. See that it is running on its machine, then try again. Nothing is lost.';

/** A refusal in the server's own words, with the form fields it points at. */
export class Refusal extends Error {
  readonly status: number;
  readonly fields: Readonly<Record<string, string>>;

  constructor(problem: Pick<Problem, 'status' | 'detail' | 'errors'>) {
    super(problem.detail);
    this.name = 'Refusal';
    this.status = problem.status;
    this.fields = Object.fromEntries(
      (problem.errors ?? []).map(({ pointer, detail }) => [pointer.replace(/^\//, ''), detail]),
    );
  }
}

export type JsonRequest = RequestInit & { readonly json?: unknown };

/** Sends a request under /api and reads its JSON. Rejects with a `Refusal` whose message can be shown. */
export async function fetchJson<Answer>(path: string, init: JsonRequest = {}): Promise<Answer> {
  const answer = await fetchAnswer(path, init);
  return (answer.status === 204 ? undefined : await answer.json()) as Answer;
}

/** Sends a request under /api. Rejects with a `Refusal` whose message can be shown. */
export async function fetchAnswer(path: string, init: JsonRequest): Promise<Response> {
  const { json, ...rest } = init;
  const request: RequestInit = { ...rest };
  if (json !== undefined) {
    request.body = JSON.stringify(json);
    request.headers = { 'content-type': 'application/json' };
  }
  const answer = await fetch(`/api${path}`, request).catch((cause: unknown) => {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    throw new Refusal({ status: 0, detail: SERVER_AWAY });
  });
  if (!answer.ok) throw await refusalOf(answer);
  return answer;
}

async function refusalOf(answer: Response): Promise<Refusal> {
  const kind = answer.headers.get('content-type') ?? '';
  if (!kind.includes('json')) return refusalFromText(answer.status, '');
  return refusalFromText(answer.status, await answer.text());
}

/** Reads a problem body; a body that is none (a gateway's page, say) still becomes a sentence. */
export function refusalFromText(status: number, text: string): Refusal {
  if (status === 401) isOutside.write(true);
  try {
    const problem = JSON.parse(text) as Partial<Problem>;
    if (typeof problem.detail === 'string')
      return new Refusal({ ...problem, status, detail: problem.detail });
  } catch {
    // Not JSON: falls through to the sentence below.
  }
  return new Refusal({
    status,
    detail:
      status === 502 || status === 504 || status === 0
        ? SERVER_AWAY
        : `The server answered with fault ${status}. Try again; if it stays, look at the server’s log.`,
  });
}
