import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';
import { mutantWords, sendMutants } from './mutant-requests.ts';
import { mutatedBytes, seededChance } from './mutate.ts';

describe('mutants of photos and requests', () => {
  it('are taken or refused, and the server goes on', async () => {
    const count = Number(process.env.RONDURE_MUTANTS ?? 250);
    const figures = await sendMutants(temporaryFolder(), { count, seed: 7 });
    console.info(mutantWords(figures));
    expect([figures.exits, figures.brokeDown]).toEqual([0, []]);
    expect(figures.kept).toBeGreaterThan(0);
    expect(figures.refused).toBeGreaterThan(figures.mutants / 4);
  });

  it('are the same for the same seed', () => {
    const bytes = Buffer.from(Array.from({ length: 500 }, (_, at) => at & 255));
    const made = (seed: number) => mutatedBytes(bytes, seededChance(seed)).toString('hex');
    expect(made(3)).toBe(made(3));
    expect(made(3)).not.toBe(made(4));
    expect(bytes[255]).toBe(255);
  });
});
