import { describe, expect, it } from 'vitest';
import type { Advice } from '../../../core/advice/advice.ts';
import { adviseFromSittings } from '../../../core/advice/advise-from-sittings.ts';
import type { PlantHistory, SittingReports } from '../../../core/advice/plant-history.ts';
import { addDays, day } from '../../../core/day/day.ts';
import { PLANT_KINDS } from '../../../core/plant.ts';
import type { LongStem, PhotoReport } from '../../../core/report.ts';
import { reportWithoutMeasures } from '../../../core/report-of-measures.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { leafSeen } from '../foliage/leaf-seen.ts';

const TODAY = day('2026-02-10');

const PHOTO = {
  name: 'a.jpg',
  widthPx: 1600,
  heightPx: 1200,
  rasterWidthPx: 1600,
  rasterHeightPx: 1200,
  rimMm: 130,
  turnDeg: 0,
  notes: [],
};

function measured(changes: Partial<PhotoReport> = {}): PhotoReport {
  return {
    ...reportWithoutMeasures(PHOTO, 'no-canopy', ''),
    status: 'measured',
    hint: null,
    ball: {
      centrePx: [800, 500],
      radiusPx: 300,
      radiusMm: 150,
      radiusPlusMinusPx: 4,
      radiusPlusMinusMm: 2,
      outOfRoundPx: 24,
      outOfRoundMm: 12,
      openArcDeg: 280,
    },
    roundness: { score: 90, plusMinus: 2 },
    symmetry: { score: 92, plusMinus: 2 },
    lopsidedness: { percent: 1, plusMinus: 2, side: 'even' },
    ...changes,
  };
}

const STEM: LongStem = {
  tipPx: [800, 150],
  cutPx: [800, 200],
  excessPx: 50,
  excessMm: 25.4,
  clock: 12,
  kind: 'shoot',
};

const leaning = (percent: number, plusMinus = 2): Partial<PhotoReport> => ({
  lopsidedness: { percent, plusMinus, side: percent < 0 ? 'left' : 'right' },
});

const sitting = (daysAgo: number, ...reports: PhotoReport[]): SittingReports => ({
  day: addDays(TODAY, -daysAgo),
  reports,
});

function advise(changes: Partial<PlantHistory> = {}): Advice[] {
  return adviseFromSittings({
    kind: 'regal',
    showDay: null,
    today: TODAY,
    sittings: [sitting(0, measured())],
    stops: [],
    ...changes,
  });
}

const kinds = (advice: readonly Advice[]) => advice.map(({ kind }) => kind);

describe('yellow leaf beside other work', () => {
  const leaf = {
    now: leafSeen(TODAY, { yellow: 0.1 }),
    before: leafSeen(addDays(TODAY, -7), { yellow: 0.02 }),
    clearedOn: null,
  };

  it('waits behind turning and shortening that are no more urgent', () => {
    const report = measured({ ...leaning(4), longStems: [STEM] });
    expect(kinds(advise({ sittings: [sitting(0, report)], leaf }))).toEqual(['turn', 'shorten', 'clear']);
  });

  it('is work enough not to say "keep on"', () => {
    expect(kinds(advise({ leaf }))).toEqual(['clear']);
  });
});

describe('an even plant photographed today', () => {
  it('is to be kept as it is', () => {
    const [keep, ...others] = advise();
    expect(others).toEqual([]);
    expect(keep).toMatchObject({
      kind: 'keep',
      urgency: 0,
      howMuch: 'Roundness 90.0 ± 2.0.',
      sureness: 'likely',
    });
  });

  it('calls a change inside the plus-minus no change', () => {
    const before = sitting(7, measured({ roundness: { score: 88, plusMinus: 2 } }));
    expect(advise({ sittings: [before, sitting(0, measured())] })[0]?.howMuch).toBe(
      'Roundness 90.0 ± 2.0. No change since 3 February 2026.',
    );
  });

  it('names a change beyond the plus-minus', () => {
    const before = sitting(7, measured({ roundness: { score: 84, plusMinus: 2 } }));
    expect(advise({ sittings: [before, sitting(0, measured())] })[0]?.howMuch).toBe(
      'Roundness 90.0 ± 2.0. It has become rounder by 6.0 since 3 February 2026.',
    );
  });

  it('is not compared with a photo of another side', () => {
    const before = sitting(7, measured({ turnDeg: 90, roundness: { score: 50, plusMinus: 2 } }));
    expect(advise({ sittings: [before, sitting(0, measured())] })[0]?.howMuch).toBe('Roundness 90.0 ± 2.0.');
  });

  it('says when the side cannot be told', () => {
    const keep = advise({ sittings: [sitting(0, measured({ lopsidedness: null }))] })[0];
    expect(keep).toMatchObject({ kind: 'keep', sureness: 'unsure' });
    expect(keep?.why).toContain('no pot rim was found');
  });
});

describe('a leaning plant', () => {
  it('has its weak side turned to the light', () => {
    const [turn] = advise({ sittings: [sitting(0, measured(leaning(-9)))] });
    expect(turn).toMatchObject({
      kind: 'turn',
      urgency: 2,
      what: 'Turn its right side to the light.',
      sureness: 'likely',
    });
    expect(turn?.where).toContain('at 3 o’clock seen from above with the mark at 6');
    expect(turn?.where).toContain('One photo tells left from right only');
    expect(turn?.howMuch).toBe('The canopy’s middle stands 9.0 % of the ball’s radius to the left (± 2.0).');
  });

  // Azimuth runs anticlockwise seen from above with the mark at 6: 0 → 6, 90 → 3, 180 → 12, 270 → 9.
  it.each([
    [0, -9, 3],
    [0, 9, 9],
    [90, -9, 12],
    [90, 9, 6],
    [180, -9, 9],
    [270, 9, 12],
    [45, -9, 2],
  ])('turned by %d° and leaning %d %% is weak at %d o’clock', (turnDeg, percent, clock) => {
    const [turn] = advise({ sittings: [sitting(0, measured({ turnDeg, ...leaning(percent) }))] });
    expect(turn?.where).toContain(`at ${clock} o’clock seen from above`);
  });

  it('is left alone inside the plus-minus', () => {
    const sittings = [sitting(0, measured({ lopsidedness: { percent: -3, plusMinus: 3, side: 'even' } }))];
    expect(kinds(advise({ sittings }))).toEqual(['keep']);
  });

  it('is told whether it moved since the last sitting', () => {
    const now = sitting(0, measured(leaning(-9)));
    const same = advise({ sittings: [sitting(7, measured(leaning(-10))), now] })[0];
    expect(same?.howMuch).toContain('No change since 3 February 2026.');
    const moved = advise({ sittings: [sitting(7, measured(leaning(-20))), now] })[0];
    expect(moved?.howMuch).toContain('Since 3 February 2026 it has moved 11.0 % to the right.');
  });
});

describe('long stems', () => {
  const shoulder: LongStem = { ...STEM, clock: 3, excessMm: 14.6, kind: 'shoulder' };

  it('are counted, placed and measured, with the caution beside them', () => {
    const [shorten] = advise({ sittings: [sitting(0, measured({ longStems: [STEM, shoulder] }))] });
    expect(shorten).toMatchObject({ kind: 'shorten', what: 'Shorten 1 long stem and 1 broad shoulder.' });
    expect(shorten?.where).toBe('In the photo of 10 February 2026, as on a clock: 12, 3 o’clock.');
    expect(shorten?.howMuch).toContain('25 mm at 12; 15 mm at 3.');
    for (const word of ['blade', 'sap', 'cannot be undone', 'cats and dogs', 'dry']) {
      expect(shorten?.caution).toContain(word);
    }
  });

  it('are measured by the ball without a scale', () => {
    const [shorten] = advise({
      sittings: [sitting(0, measured({ longStems: [{ ...STEM, excessMm: null }] }))],
    });
    expect(shorten?.howMuch).toContain('17 % of the ball’s radius at 12');
  });

  it('are left to break after a stop, and until they are photographed again', () => {
    const sittings = [sitting(0, measured({ longStems: [STEM] }))];
    const stopped = advise({ sittings, stops: [{ day: addDays(TODAY, -10), depth: 'tip' }] });
    expect(kinds(stopped)).toEqual(['wait']);
    const old = [sitting(20, measured({ longStems: [STEM] }))];
    expect(
      kinds(advise({ sittings: old, stops: [{ day: addDays(TODAY, -15), depth: 'tip' }] })),
    ).not.toContain('shorten');
  });

  it('close to the show come with a warning about bloom', () => {
    const sittings = [sitting(0, measured({ longStems: [STEM] }))];
    const stops = [{ day: addDays(TODAY, -60), depth: 'tip' as const }];
    const late = advise({ sittings, stops, showDay: addDays(TODAY, 60) }).find(
      ({ kind }) => kind === 'shorten',
    );
    expect(late?.why).toMatch(
      /unlikely to bloom by the show \(full bloom begins .+ late for the show is over 99 %\)/,
    );
  });
});

describe('after a stop', () => {
  const stops = (daysAgo: number, depth: 'tip' | 'deep') => [{ day: addDays(TODAY, -daysAgo), depth }];

  it('a deep one is kept dry for about a week', () => {
    const [wait] = advise({ stops: stops(2, 'deep') });
    expect(wait).toMatchObject({ kind: 'wait', urgency: 2, what: 'Do not water yet, and let it break.' });
    expect(wait?.howMuch).toContain('No water until about 15 February 2026 (4–5 days at the least)');
    expect(wait?.why).toContain('common practice, no source');
    expect(wait?.caution).toContain('Fresh cuts rot easily');
  });

  it('a tip one needs no dry week', () => {
    const [wait] = advise({ stops: stops(2, 'tip') });
    expect(wait?.what).toBe('Let it break before cutting again.');
    expect(wait?.howMuch).not.toContain('water');
  });

  it('the waiting ends after four weeks', () => {
    expect(kinds(advise({ stops: stops(27, 'tip') }))).toEqual(['wait']);
    expect(kinds(advise({ stops: stops(28, 'tip') }))).toEqual(['keep']);
  });

  it('a stop planned for later is not waited for', () => {
    expect(kinds(advise({ stops: stops(-5, 'deep') }))).toEqual(['keep']);
  });
});

describe('photographs', () => {
  it('are asked for when there is none', () => {
    expect(advise({ sittings: [] })[0]).toMatchObject({
      kind: 'photograph',
      urgency: 1,
      what: 'Take the first photo.',
    });
  });

  it('are asked for after ten days', () => {
    expect(kinds(advise({ sittings: [sitting(10, measured())] }))).toEqual(['keep']);
    const [again] = advise({ sittings: [sitting(11, measured())] });
    expect(again).toMatchObject({ kind: 'photograph', urgency: 2 });
    expect(again?.why).toBe('The newest photo is 11 days old, of 30 January 2026.');
  });

  it('are asked for again when the last could not be measured, with its hint', () => {
    const blurred = reportWithoutMeasures(PHOTO, 'blurred', 'Rest the camera on something firm.');
    const [again, ...others] = advise({ sittings: [sitting(7, measured(leaning(-9))), sitting(0, blurred)] });
    expect(again).toMatchObject({
      kind: 'photograph',
      urgency: 2,
      howMuch: 'Rest the camera on something firm.',
    });
    expect(others).toEqual([]);
  });

  it('of long ago advise nothing about today’s shape', () => {
    const sittings = [sitting(40, measured({ ...leaning(-9), longStems: [STEM] }))];
    expect(kinds(advise({ sittings }))).toEqual(['photograph']);
  });

  it('still being measured are waited for', () => {
    expect(advise({ sittings: [sitting(0)] })).toEqual([]);
  });
});

describe('a sitting that the grower left out', () => {
  it('advises nothing but a new photo, with the reason', () => {
    const limp = measured({ ...leaning(-9), longStems: [STEM] });
    const [again, ...others] = advise({ sittings: [{ ...sitting(0, limp), leftOut: 'limp from drought' }] });
    expect(again).toMatchObject({
      kind: 'photograph',
      what: 'Photograph it again once it stands as it should.',
      why: 'The sitting of 10 February 2026 is left out by you: limp from drought.',
    });
    expect(others).toEqual([]);
  });
});

describe('a photo from another place than the stand’s', () => {
  const elsewhere = (changes: Partial<PhotoReport> = {}) =>
    measured({ notCompared: 'The camera stands about 9 cm further left than on the first day.', ...changes });

  it('is asked for again, with the reason, and its scores advise nothing', () => {
    const [again, ...others] = advise({ sittings: [sitting(0, elsewhere(leaning(-9)))] });
    expect(again).toMatchObject({
      kind: 'photograph',
      urgency: 2,
      what: 'Take the photo again from the camera’s old place.',
      why: 'The scores of 10 February 2026 are left out of the trend, and no advice rests on them. The camera stands about 9 cm further left than on the first day.',
    });
    expect(others).toEqual([]);
  });

  it('still shows its long stems', () => {
    const sittings = [sitting(0, elsewhere({ longStems: [STEM] }))];
    expect(kinds(advise({ sittings }))).toEqual(['photograph', 'shorten']);
  });

  it('is passed over where an earlier one is compared with', () => {
    const sittings = [
      sitting(14, measured({ roundness: { score: 84, plusMinus: 2 } })),
      sitting(7, elsewhere({ roundness: { score: 50, plusMinus: 2 } })),
      sitting(0, measured()),
    ];
    expect(advise({ sittings })[0]?.howMuch).toBe(
      'Roundness 90.0 ± 2.0. It has become rounder by 6.0 since 27 January 2026.',
    );
  });

  it('leaves the word to another view of the same day', () => {
    const [turn] = advise({ sittings: [sitting(0, elsewhere(), measured({ turnDeg: 90, ...leaning(-9) }))] });
    expect(turn).toMatchObject({ kind: 'turn', what: 'Turn its right side to the light.' });
  });
});

describe('the plan', () => {
  const plan = (changes: Partial<PlantHistory>) => advise(changes).find(({ kind }) => kind === 'plan');

  it('is none without a show day or a rule for the kind', () => {
    expect(plan({})).toBeUndefined();
    expect(plan({ kind: 'other', showDay: day('2026-06-20') })).toBeUndefined();
  });

  const DEEP = { day: day('2025-12-20'), depth: 'deep' as const };

  // 135 days before: 18–19 weeks less half a fortnight of bloom, more what one plant of ten may need longer.
  it('counts a regal’s last stop back from the show and says what that rests on', () => {
    const next = plan({ showDay: day('2026-07-04'), stops: [DEEP] });
    expect(next?.what).toBe('Plan the last tip stop, for 13 February 2026 to 19 February 2026.');
    expect(next?.why).toContain('later than that, more than 10 % of plants would be late');
    expect(next?.why).toContain('Usual is 21 February 2026 to 28 February 2026');
    expect(next?.why).toContain('common practice, no source');
    expect(next?.why).toContain('All default: you have no record of this kind and stop yet.');
    expect(next?.why).toContain('Your own records go before it');
    expect(next?.sureness).toBe('unsure');
    expect(next?.urgency).toBe(1);
    expect(next?.caution).toContain('cannot be undone');
  });

  it('counts its deep stop back from there', () => {
    const next = plan({ showDay: day('2026-09-12') });
    expect(next?.what).toBe('Plan the first stop, a deep stop, for 10 March 2026 to 16 March 2026.');
    expect(next?.urgency).toBe(0);
  });

  it('asks for the stop while its window is open', () => {
    const next = plan({ showDay: day('2026-06-27') });
    expect(next).toMatchObject({ urgency: 2, what: 'Give the last tip stop, by 12 February 2026.' });
  });

  it('asks for it now while it would still more likely than not be in time', () => {
    const next = plan({ showDay: day('2026-06-20') });
    expect(next).toMatchObject({ urgency: 2, what: 'Give the last tip stop now.' });
    expect(next?.why).toContain(
      'its last day was 5 February 2026. If it is done today: the chance of being late is 19 %',
    );
  });

  it('takes a stop written down in time as done', () => {
    const stops = [{ day: day('2026-02-08'), depth: 'tip' as const }];
    expect(plan({ showDay: day('2026-06-27'), stops })).toBeUndefined();
  });

  it('says what a stop done late means', () => {
    const stops = [{ day: day('2026-02-09'), depth: 'tip' as const }];
    expect(plan({ showDay: day('2026-06-20'), stops })).toMatchObject({
      what: 'The last stop was 4 days late.',
      urgency: 0,
      howMuch:
        'The chance of being late is 17 %; full bloom begins 26 May 2026 to 28 June 2026, nine times in ten.',
    });
  });

  it('does not take the deep stop for the tip stop', () => {
    expect(plan({ showDay: day('2026-06-27'), stops: [DEEP] })?.what).toBe(
      'Give the last tip stop, by 12 February 2026.',
    );
  });

  it('says what a missed stop means', () => {
    const missed = plan({ showDay: day('2026-05-30') });
    expect(missed?.what).toBe('The time for the last tip stop is past.');
    expect(missed?.howMuch).toBe(
      'It was 9 January 2026 to 15 January 2026. No last stop is written down; its last day was 15 January 2026. If it is done today: the chance of being late is 91 %; full bloom begins 27 May 2026 to 29 June 2026, nine times in ten.',
    );
  });

  it('goes by the grower’s own records first', () => {
    const record = {
      plantId: 'p',
      kind: 'regal',
      variety: 'Violet One',
      depth: 'tip',
      stopDay: day('2025-02-01'),
      firstFlowerDay: null,
      fullBloomDay: addDays(day('2025-02-01'), 108),
      seasonNotes: [],
      leftOut: null,
    } as const;
    const season = {
      plantId: 'p',
      variety: 'Violet One',
      knowledge: { defaults: DEFAULT_STOPS, records: [record, record, record, record] },
    };
    const next = plan({ showDay: day('2026-07-04'), stops: [DEEP], season });
    expect(next?.what).toBe('Plan the last tip stop, for 28 February 2026 to 6 March 2026.');
    expect(next?.why).toContain('20 % default, 80 % your own 4 records.');
  });

  it('asks for a new show day once the show is over', () => {
    expect(plan({ showDay: day('2026-02-09') })?.what).toBe('Set the day of the next show.');
  });

  it('leaves an even plant to be kept while the stop is still to come', () => {
    expect(kinds(advise({ showDay: day('2026-09-12') }))).toEqual(['plan', 'keep']);
  });
});

describe('all advice', () => {
  it('comes the most urgent first, with caution beside every cut, for every kind of plant', () => {
    for (const kind of PLANT_KINDS) {
      const advice = advise({
        kind,
        showDay: day('2026-09-12'),
        sittings: [sitting(0, measured({ ...leaning(-9), longStems: [STEM] }))],
      });
      expect(kinds(advice).slice(0, 2)).toEqual(['turn', 'shorten']);
      for (const { kind: what, caution } of advice) {
        if (what === 'shorten' || what === 'plan') expect(caution).toContain('cut away from your hand');
      }
    }
  });
});
