import { describe, expect, it } from 'vitest';
import { layersShown, layersSpokenOf } from '../../web/src/photo/layers.ts';
import { thinLabel, thinTold, yellowLabel } from '../../web/src/photo/leaf-words.ts';
import { clockRunWords, thinRuns } from '../../web/src/photo/thin-sectors.ts';
import { placeZoneLabels } from '../../web/src/photo/zone-labels.ts';

const gaps = (...thin: number[]) => ({
  sectors: Array.from({ length: 12 }, (_, at) => ({
    clock: at + 1,
    gapFraction: (at + 1) / 100,
    plusMinus: 0.02,
    isThin: thin.includes(at + 1),
  })),
});

describe('thin hours', () => {
  it('that touch are one place, over 12 o’clock too', () => {
    expect(thinRuns(gaps(11, 12, 1, 5))).toEqual([
      { fromClock: 5, toClock: 5, gapFraction: 0.05 },
      { fromClock: 11, toClock: 1, gapFraction: 0.12 },
    ]);
    expect(thinRuns(gaps())).toEqual([]);
  });

  it('are told by the photo’s clock, with how open they are', () => {
    const [run] = thinRuns(gaps(2, 3));
    if (!run) throw new TypeError('Expected a run');
    expect(clockRunWords(run)).toBe('2 to 3 o’clock');
    expect(thinLabel(run)).toBe('thin, 3 % open');
    expect(thinTold(run)).toContain('Seen from this side only');
  });
});

describe('labels of zones', () => {
  const window = { x: 0, y: 0, width: 400, height: 300 };
  const zone = (x: number, y: number) => ({
    words: 'yellow 3 %',
    centrePx: [x, y] as const,
    reachPx: [10, 10] as const,
  });

  it('lie inside the window and over no other, however near the zones are', () => {
    const plates = placeZoneLabels(
      [zone(200, 150), zone(204, 152), zone(196, 148), zone(395, 295)],
      [],
      window,
      1,
    );
    expect(plates.every((plate) => plate !== null)).toBe(true);
    for (const [at, one] of plates.entries()) {
      if (!one) continue;
      expect(one.at[0] - one.size.width / 2).toBeGreaterThanOrEqual(0);
      expect(one.at[0] + one.size.width / 2).toBeLessThanOrEqual(400);
      for (const other of plates.slice(at + 1)) {
        if (!other) continue;
        const [dx, dy] = [Math.abs(one.at[0] - other.at[0]), Math.abs(one.at[1] - other.at[1])];
        expect(dx >= one.size.width || dy >= one.size.height).toBe(true);
      }
    }
  });

  it('are left out where no place is free, rather than laid over what stands there', () => {
    const wall = { at: [200, 150] as const, size: { width: 400, height: 300 } };
    expect(placeZoneLabels([zone(200, 150)], [wall], window, 1)).toEqual([null]);
  });

  it('give a share only where it is worth a number', () => {
    const yellow = { place: 'low on the left', centrePx: [0, 0] as const, outlinePx: [] };
    expect(yellowLabel({ ...yellow, areaShare: 0.031 })).toBe('yellow 3 %');
    expect(yellowLabel({ ...yellow, areaShare: 0.002 })).toBe('yellow');
  });
});

describe('the layers on the photo', () => {
  it('of yellow leaf and thin places come when asked for or spoken of', () => {
    expect(layersShown({})).not.toContain('yellow');
    expect(layersShown({}, ['yellow'])).toContain('yellow');
    expect(layersShown({ thin: true })).toContain('thin');
  });

  it('of yellow leaf are spoken of by the advice to clear it, by no other', () => {
    expect(layersShown({}, layersSpokenOf([{ kind: 'turn' }, { kind: 'clear' }]))).toContain('yellow');
    expect(layersSpokenOf([{ kind: 'turn' }, { kind: 'keep' }])).toEqual([]);
  });

  it('stay as the grower switched them, whatever is spoken of', () => {
    expect(layersShown({ yellow: false, ball: false }, ['yellow'])).not.toContain('yellow');
    expect(layersShown({ ball: false })).not.toContain('ball');
  });
});
