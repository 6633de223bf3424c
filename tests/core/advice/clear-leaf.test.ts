import { describe, expect, it } from 'vitest';
import { clearLeaf } from '../../../core/advice/clear-leaf.ts';
import type { LeafHistory } from '../../../core/advice/plant-history.ts';
import { addDays, day } from '../../../core/day/day.ts';
import { leafWords, tellingLeaf } from '../../../core/foliage/leaf-change.ts';
import { leafSeen } from '../foliage/leaf-seen.ts';

const TODAY = day('2026-05-20');

const advise = (leaf: LeafHistory | null, today = TODAY) =>
  clearLeaf({ kind: 'regal', showDay: null, today, sittings: [], stops: [], leaf });

const LOW_LEFT = { place: 'low on the left', areaShare: 0.08 };
const before = leafSeen('2026-05-11', { yellow: 0.02 });
const now = leafSeen('2026-05-18', { yellow: 0.1, where: [LOW_LEFT] });

describe('yellow leaf that has risen', () => {
  it('is to be cleared where it stands, with its caution', () => {
    expect(advise({ now, before, clearedOn: null })).toMatchObject({
      kind: 'clear',
      urgency: 1,
      what: 'Clear the yellow leaves low on the left.',
      where: 'As seen in the photo of 18 May 2026, where it is drawn.',
      howMuch:
        'Yellow leaf rose from 2 % (± 2) to 10 % (± 2) of the leaf seen. The sitting before is that of 11 May 2026.',
      sureness: 'likely',
    });
    expect(advise({ now, before, clearedOn: null })?.caution).toContain('cats and dogs');
  });

  it('is said to be less sure while the plant’s own leaf is not known', () => {
    const usual = { against: 'usual', normalFrom: null } as const;
    const leaf = { now: { ...leafSeen('2026-05-18', { yellow: 0.1 }, usual) }, clearedOn: null };
    const earlier = leafSeen('2026-05-11', { yellow: 0.02 }, usual);
    expect(advise({ ...leaf, before: earlier })?.sureness).toBe('unsure');
  });

  it('is not asked for again once leaf was cleared, until a new photo shows it', () => {
    expect(advise({ now, before, clearedOn: day('2026-05-19') })).toBeNull();
    expect(advise({ now, before, clearedOn: day('2026-05-12') })).not.toBeNull();
  });

  it('inside the plus-minus, or without an earlier photo, gives no advice', () => {
    const little = leafSeen('2026-05-18', { yellow: 0.04 });
    expect(advise({ now: little, before, clearedOn: null })).toBeNull();
    expect(advise({ now, before: null, clearedOn: null })).toBeNull();
    expect(advise(null)).toBeNull();
  });

  it('seen three weeks ago says nothing of today', () => {
    expect(advise({ now, before, clearedOn: null }, addDays(TODAY, 20))).toBeNull();
  });
});

describe('the photo that tells most of a sitting', () => {
  it('is the one whose yellow rose most for sure, held against its own side', () => {
    const earlier = [before, leafSeen('2026-05-11', { yellow: 0.12 }, { turnDeg: 90 })];
    const side = leafSeen('2026-05-18', { yellow: 0.14 }, { turnDeg: 90 });
    const told = tellingLeaf([side, now], earlier);
    expect(told.now).toBe(now);
    expect(told.before).toBe(before);
  });

  it('is held against none that was judged by another normal, or by another white', () => {
    const other = leafSeen('2026-05-11', { yellow: 0.02 }, { normalFrom: [day('2026-05-01')] });
    expect(tellingLeaf([now], [other]).before).toBeNull();
    const untold = leafSeen('2026-05-11', { yellow: 0.02 }, { notCompared: 'White is not known.' });
    expect(tellingLeaf([now], [untold]).before).toBeNull();
  });
});

describe('the leaf in words', () => {
  it('says what rose and where, and what did not change', () => {
    expect(leafWords(now, before)).toBe(
      'Yellow leaf rose from 2 % (± 2) to 10 % (± 2) since 11 May 2026, low on the left. Brown: no change, 0 % (± 2).',
    );
    expect(leafWords(leafSeen('2026-05-25', { yellow: 0.02 }), now)).toContain('Yellow leaf fell from 10 %');
    expect(leafWords(leafSeen('2026-05-25', { yellow: 0.03 }), before)).toContain(
      'No change in yellow or brown',
    );
    expect(leafWords(now, null)).toContain('no change can be told yet');
  });
});
