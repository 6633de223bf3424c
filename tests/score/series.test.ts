import { describe, expect, it } from 'vitest';
import { noPlant } from '../../core/canopy/hints.ts';
import type { Pair } from './folders.ts';
import { byDay, openSeries } from './series.ts';

const pairOf = (name: string): Pair => ({
  name,
  photo: '',
  mask: '',
  maskWithPot: null,
  empty: null,
  truth: null,
});
const nothing = noPlant('no-canopy');

function sceneOf(name: string) {
  const [width, height] = [40, 40];
  const inside = (i: number) => i % width > 10 && i % width < 30 && i > 400 && i < 1200;
  const raster = {
    width,
    height,
    data: Uint8Array.from({ length: 3 * width * height }, (_, k) =>
      inside(Math.floor(k / 3)) ? ([40, 120, 30][k % 3] as number) : 220,
    ),
  };
  const wanted = {
    width,
    height,
    data: Uint8Array.from({ length: width * height }, (_, i) => (inside(i) ? 1 : 0)),
  };
  return { pair: pairOf(name), raster, empty: null, wanted, wantedWithPot: null, rasterPxPerPhotoPx: 1 };
}

describe('a series', () => {
  it('takes photos by day', () => {
    const pairs = ['b_2026-10-04', 'a_2026-10-11', 'c_2026-09-27'].map(pairOf);
    expect(byDay({ name: '', pairs }).map(({ name }) => name)).toEqual([
      'c_2026-09-27',
      'b_2026-10-04',
      'a_2026-10-11',
    ]);
  });

  it('knows nothing before the first photo, then colours, and the last outline of the same turn', () => {
    const series = openSeries();
    expect(series.before(pairOf('2026-10-04'))).toBeNull();
    series.accept(sceneOf('2026-10-04'), nothing);
    const week = series.before(pairOf('2026-10-11'));
    expect(week?.colours?.photos).toBe(1);
    expect(week?.lastOutline?.days).toBe(7);
    const turned = series.before(pairOf('2026-10-11-turn090'));
    expect(turned?.colours?.photos).toBe(1);
    expect(turned?.lastOutline).toBeNull();
  });

  it('keeps plants apart and learns nothing from a name without a day', () => {
    const series = openSeries();
    series.accept(sceneOf('fuchsia_2026-10-04_sv000'), nothing);
    expect(series.before(pairOf('regal_2026-10-11_sv000'))).toBeNull();
    expect(series.before(pairOf('fuchsia_2026-10-04_sv045'))?.colours?.photos).toBe(1);
    series.accept(sceneOf('pot'), nothing);
    expect(series.before(pairOf('pot'))).toBeNull();
  });
});
