import { describe, expect, it, onTestFinished } from 'vitest';
import { createLateWrites } from '../../server/store/late-writes.ts';

function lateWrites() {
  const logged: unknown[] = [];
  const writes = createLateWrites({ error: (...told: unknown[]) => void logged.push(told) }, 10);
  onTestFinished(() => writes.close());
  return { writes, logged };
}

const full = () => Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
const never = (fault: unknown) => {
  throw fault;
};

describe('writes that nobody waits for', () => {
  it('are done at once while the store takes them', () => {
    const { writes, logged } = lateWrites();
    const done: number[] = [];
    writes.write(() => done.push(1), never);
    writes.write(() => done.push(2), never);
    expect([done, logged]).toEqual([[1, 2], []]);
  });

  it('wait in their order until it does, each done once', async () => {
    const { writes, logged } = lateWrites();
    const done: number[] = [];
    let failures = 3;
    writes.write(() => {
      failures -= 1;
      if (failures >= 0) throw full();
      done.push(1);
    }, never);
    writes.write(() => done.push(2), never);
    expect(done).toEqual([]);
    await expect.poll(() => done).toEqual([1, 2]);
    expect(logged.length).toBeGreaterThanOrEqual(3);
  });

  it('may ask for others, which come after', () => {
    const { writes } = lateWrites();
    const done: string[] = [];
    writes.write(() => {
      writes.write(() => done.push('asked for'), never);
      done.push('first');
    }, never);
    expect(done).toEqual(['first', 'asked for']);
  });

  it('are not tried again over a fault of our own, which is told; the next has its turn', () => {
    const { writes, logged } = lateWrites();
    const told: unknown[] = [];
    const done: number[] = [];
    writes.write(
      () => {
        throw new TypeError('Expected a report but found none');
      },
      (fault) => told.push(fault),
    );
    writes.write(() => done.push(2), never);
    expect([told.length, done, logged]).toEqual([1, [2], []]);
  });

  it('are left when it closes', async () => {
    const { writes } = lateWrites();
    let tries = 0;
    writes.write(() => {
      tries += 1;
      throw full();
    }, never);
    writes.close();
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(tries).toBe(1);
  });
});
