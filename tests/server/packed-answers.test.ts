import { describe, expect, it } from 'vitest';
import { jsonOf } from '../../server/routes/packed-answers.ts';
import { openBench } from './fixtures/open-bench.ts';

describe('an answer on all plants', () => {
  it('is the JSON that it would be in one piece', () => {
    const row = { name: 'Kettle "Moth"', list: [1, null, 'é'] };
    const answer = {
      day: '2026-06-01',
      left: undefined,
      none: [],
      rows: [row, { ...row, name: '' }, row],
      of: { a: 1 },
    };
    expect(jsonOf(answer).toString()).toBe(JSON.stringify(answer));
    expect(jsonOf({}).toString()).toBe('{}');
  });

  it('is sent packed to who takes it and plain to who does not, the same both ways and again', async () => {
    const { url, addPlant } = await openBench();
    await addPlant();
    const ask = async (encoding: string) => {
      const answer = await fetch(`${url}/api/bench`, { headers: { 'accept-encoding': encoding } });
      return [answer.headers.get('content-encoding'), answer.headers.get('vary'), await answer.text()];
    };
    const [packed, plain, again] = [await ask('gzip'), await ask('identity'), await ask('gzip')];
    expect(packed.slice(0, 2)).toEqual(['gzip', 'Accept-Encoding']);
    expect(plain).toEqual([null, 'Accept-Encoding', packed[2]]);
    expect(again).toEqual(packed);
  });
});
