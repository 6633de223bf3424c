import { describe, expect, it } from 'vitest';
import { openOpenCv } from '../../../core/opencv/door.ts';
import { maskParts } from '../../../core/opencv/masks.ts';
import type { OpenCvObject } from '../../../core/opencv/typings.ts';
import { maskOf } from '../drawn-shapes.ts';

describe('the door to OpenCV', () => {
  it('frees what was kept, in the reverse order, also when the work throws', async () => {
    const door = await openOpenCv();
    const freed: string[] = [];
    const thing = (name: string): OpenCvObject => ({ delete: () => freed.push(name) });
    expect(() =>
      door.use((_, keep) => {
        keep(thing('first'));
        keep(thing('second'));
        throw new Error('stop');
      }),
    ).toThrow('stop');
    expect(freed).toEqual(['second', 'first']);
  });

  it('turns the bare number that OpenCV throws into its words', async () => {
    const door = await openOpenCv();
    expect(() =>
      door.use((cv, keep) => {
        const empty = keep(new cv.Mat());
        cv.resize(empty, keep(new cv.Mat()), new cv.Size(4, 4), 0, 0, cv.INTER_AREA);
      }),
    ).toThrow(/OpenCV failed: .*resize/s);
  });

  it('is opened once', async () => {
    expect(await openOpenCv()).toBe(await openOpenCv());
  });

  it('lists the parts of a mask, largest first', async () => {
    const { parts, labels } = maskParts(
      await openOpenCv(),
      maskOf(`
        #....##
        .#...##
        .......
        ....#..
      `),
    );
    expect(parts.map(({ areaPx, left, top }) => [areaPx, left, top])).toEqual([
      [4, 5, 0],
      [2, 0, 0],
      [1, 4, 3],
    ]);
    expect(labels[1]).toBe(0);
  });
});
