import { afterEach, describe, expect, it, vi } from 'vitest';
import { day } from '../../core/day/day.ts';
import type { Bench } from '../../server/schemas/pages.ts';
import { benchQuery, queryClient } from '../../web/src/api/queries.ts';
import { type Piece, sayOfWork } from '../../web/src/api/work-words.ts';

const DUE = { key: 'turn 2026-05-01', plantId: 'p1', state: 'due', movedFrom: null } as unknown as Piece;
const benchWith = (work: object) => ({ plants: [{ plant: { id: 'p1' }, work: [work] }] }) as unknown as Bench;

/** Answers of the server that come when the test lets them. */
function answersInHand() {
  const waiting = new Map<string, (body: object) => void>();
  vi.stubGlobal(
    'fetch',
    (path: string) =>
      new Promise<Response>((resolve) => waiting.set(path, (body) => resolve(Response.json(body)))),
  );
  return {
    isAsked: (path: string) => waiting.has(path),
    give(path: string, body: object) {
      waiting.get(path)?.(body);
      waiting.delete(path);
    },
  };
}

const stateOnBench = () => queryClient.getQueryData(benchQuery.queryKey)?.plants[0]?.work[0]?.state;

describe('work that was just done', () => {
  afterEach(() => {
    queryClient.clear();
    vi.unstubAllGlobals();
  });

  it('stays off the list when an answer asked for before the tap comes after it', async () => {
    const answers = answersInHand();
    queryClient.setQueryData(benchQuery.queryKey, benchWith(DUE));
    const earlier = queryClient.fetchQuery({ ...benchQuery, staleTime: 0 }).catch(() => undefined);
    await vi.waitUntil(() => answers.isAsked('/api/bench'));
    const saying = sayOfWork([DUE], { said: 'done', day: day('2026-05-01') }, 'Done.');
    await vi.waitUntil(() => answers.isAsked('/api/work/words'));
    expect(stateOnBench()).toBe('done');
    answers.give('/api/bench', benchWith(DUE));
    await earlier;
    expect(stateOnBench()).toBe('done');
    answers.give('/api/work/words', {});
    await vi.waitUntil(() => answers.isAsked('/api/bench'));
    answers.give('/api/bench', benchWith({ ...DUE, state: 'done', stateInWords: 'Done on 1 May 2026.' }));
    await saying;
    expect(stateOnBench()).toBe('done');
  });
});
