import { describe, expect, it } from 'vitest';
import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import { sittingCutLines, sittingCuts } from '../../server/command-line/sitting-cuts.ts';
import { placedStem } from './fixtures/long-stems.ts';

function placed(stems: StemsOfSitting['stems']): StemsOfSitting {
  return { stems, crown: { centre: [0, 0, 80], radius: 150 }, notes: [] };
}

describe('the cuts of a turned sitting on the command line', () => {
  const stems = placed([
    placedStem(90, 60.04),
    placedStem(359.97, 30, { elevationDeg: -20, kind: 'shoulder', seenIn: [2], unsure: true }),
  ]);

  it('are told by azimuth, elevation, excess and kind', () => {
    expect(sittingCuts(stems)).toEqual([
      {
        azimuthDeg: 90,
        elevationDeg: 10,
        excessMm: 60,
        plusMinusMm: 6,
        kind: 'shoot',
        seenIn: [0, 1],
        unsure: false,
      },
      {
        azimuthDeg: 0,
        elevationDeg: -20,
        excessMm: 30,
        plusMinusMm: 6,
        kind: 'shoulder',
        seenIn: [2],
        unsure: true,
      },
    ]);
  });

  it('are told in the table by the clock, the views counted from 1', () => {
    expect(sittingCutLines(stems)).toEqual([
      '',
      'Long stems (clock from above, mark at 6):',
      '- shoot at 3 o’clock (90°), 10° up from the ball’s middle: 60 ± 6 mm too long, seen in views 1, 2',
      '- shoulder at 6 o’clock (0°), 20° down from the ball’s middle: 30 ± 6 mm too long, seen in view 3 only: unsure',
    ]);
  });

  it('are none on an even plant, and null where they cannot be placed', () => {
    expect(sittingCuts(placed([]))).toEqual([]);
    expect(sittingCutLines(placed([]))).toEqual(['', 'Long stems: none']);
    const unknown = { stems: [], crown: null, notes: ['A view has no scale.'] };
    expect([sittingCuts(unknown), sittingCutLines(unknown)]).toEqual([null, []]);
  });
});
