import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import type { Sitting, View } from '../../server/schemas/sitting.ts';
import { changeSince } from '../../web/src/measures/change.ts';
import { leavesOf, measuredBefore, neighbour } from '../../web/src/plant/leafing.ts';

const roundness = (score: number, plusMinus: number) => ({ roundness: { score, plusMinus } }) as PhotoReport;
const lean = (percent: number, plusMinus: number) =>
  ({ lopsidedness: { percent, plusMinus, side: percent < 0 ? 'left' : 'right' } }) as PhotoReport;
const size = (radiusMm: number | null) => ({ ball: { radiusMm } }) as PhotoReport;

describe('a change since the last sitting', () => {
  it('is no change inside the plus-minus of the two together: 3 and 4 make 5', () => {
    expect(changeSince(roundness(85, 3), roundness(80, 4), 'roundness')).toEqual({
      words: 'no change',
      sense: 'neither',
    });
    expect(changeSince(roundness(85.1, 3), roundness(80, 4), 'roundness')).toEqual({
      words: '+5',
      sense: 'better',
    });
    expect(changeSince(roundness(70, 3), roundness(80, 4), 'roundness')).toEqual({
      words: '−10',
      sense: 'worse',
    });
  });

  it('of the lean counts from side to side and says which way', () => {
    expect(changeSince(lean(4, 1), lean(-4, 1), 'lopsidedness')).toMatchObject({
      words: 'moved 8.0 % to the right',
    });
    expect(changeSince(lean(-2, 1), lean(-9, 1), 'lopsidedness')).toEqual({
      words: 'moved 7.0 % to the right',
      sense: 'better',
    });
  });

  it('is not judged without a plus-minus, and not made up without a number', () => {
    expect(changeSince(size(110), size(100), 'size')).toEqual({
      words: '+20 mm, may be chance',
      sense: 'neither',
    });
    expect(changeSince(size(null), size(100), 'size')).toBeNull();
  });
});

describe('a change of size', () => {
  it('is told, but growing is neither better nor worse', () => {
    const grown = (radiusMm: number) => ({ ball: { radiusMm, radiusPlusMinusMm: 1 } }) as PhotoReport;
    expect(changeSince(grown(110), grown(100), 'size')).toEqual({ words: '+20 mm', sense: 'neither' });
    expect(changeSince(grown(101), grown(100), 'size')).toEqual({ words: 'no change', sense: 'neither' });
  });
});

describe('leafing', () => {
  const view = (id: string, status: string, turnDeg: number | null = 0) =>
    ({ id, turnDeg, standId: null, report: { status } }) as unknown as View;
  const sitting = (day: string, ...views: View[]) => ({ id: day, day, views }) as unknown as Sitting;
  const sittings = [
    sitting('2026-03-22', view('c0', 'measured'), view('c90', 'measured', 90)),
    sitting('2026-03-15', view('b', 'blurred')),
    sitting('2026-03-08', view('a0', 'measured', null), view('a90', 'measured', 90)),
  ];
  const leaves = leavesOf(sittings);
  const leaf = (id: string) => {
    const found = leaves.find((one) => one.view.id === id);
    if (!found) throw new TypeError(`Expected a photo ${id} but received none`);
    return found;
  };

  it('stops at both ends', () => {
    expect(neighbour(leaves, leaf('c0'), -1).view.id).toBe('c0');
    expect(neighbour(leaves, leaf('c0'), 1).view.id).toBe('c90');
    expect(neighbour(leaves, leaf('a90'), 1).view.id).toBe('a90');
  });

  it('compares with the last measured photo of an earlier sitting at the same turn', () => {
    expect(measuredBefore(sittings, leaf('c0'))?.view.id).toBe('a0');
    expect(measuredBefore(sittings, leaf('c90'))?.view.id).toBe('a90');
    expect(measuredBefore(sittings, leaf('a0'))).toBeNull();
  });

  it('compares no photo from too far off the stand, neither as the later nor as the earlier', () => {
    const far = (id: string) =>
      ({ id, turnDeg: 0, report: { status: 'measured', frame: { standing: 'far' } } }) as unknown as View;
    const good = sitting('2026-03-22', view('now', 'measured'));
    const oldest = sitting('2026-03-08', view('first', 'measured'));
    const between = [good, sitting('2026-03-15', far('astray')), oldest];
    const [now, astray] = leavesOf(between);
    if (!now || !astray) throw new TypeError('Expected two photos');
    expect(measuredBefore(between, now)?.view.id).toBe('first');
    expect(measuredBefore(between, astray)).toBeNull();
    const elsewhere = {
      ...astray.view,
      standId: 'a-stand',
      report: { status: 'measured', frame: null },
    } as View;
    expect(measuredBefore(between, { ...astray, view: elsewhere })).toBeNull();
  });
});
