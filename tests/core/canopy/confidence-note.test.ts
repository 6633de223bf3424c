import { describe, expect, it } from 'vitest';
import { confidenceNote } from '../../../core/canopy/confidence-note.ts';
import { NOTES } from '../../../core/canopy/hints.ts';
import { disc, drawMask, foundPlant, unsureZone } from '../drawn-shapes.ts';

const CANOPY = drawMask(200, 200, disc([100, 100], 60));
const ZONE = unsureZone(drawMask(200, 200, disc([130, 100], 20)), { inCanopy: true, chance: 0.6 });

const noteOf = (told: Parameters<typeof foundPlant>[3]) =>
  confidenceNote(foundPlant(CANOPY, null, 0.5, told));

describe('the note about a doubtful outline', () => {
  it('is silent about a sure one', () => {
    expect(noteOf({ confidence: 0.95 })).toEqual([]);
    expect(noteOf({ confidence: 0.9, notes: [NOTES.busyPlace] })).toEqual([]);
  });

  it('says how sure, why and what would help', () => {
    expect(noteOf({ confidence: 0.843, unsureZones: [ZONE], notes: [NOTES.busyPlace] })).toEqual([
      'The outline is doubtful, about 84 % sure: zones as large as 11 % of the canopy may or may not be plant, and things behind the plant look like it. A plain cloth behind the plant, or a photo of the empty stand from the same place, would make it surer. Until then mend the outline where it is wrong.',
    ]);
  });

  it.each([
    [NOTES.faintEdge, 'coloured like the backdrop', 'another colour'],
    [NOTES.unsharp, 'a little unsharp', 'More light'],
    [NOTES.emptyMoved, 'look alike', 'A new photo of the empty stand'],
  ])('goes by what is known to be amiss: %s', (note, why, help) => {
    const [words = ''] = noteOf({ confidence: 0.7, notes: [note] });
    expect(words).toContain(why);
    expect(words).toContain(help);
  });

  it('offers cloth, empty photo and light when nothing is known to be amiss', () => {
    expect(noteOf({ confidence: 0.7 })).toEqual([
      'The outline is doubtful, about 70 % sure: plant and surroundings look alike. A plain cloth behind the plant, a photo of the empty stand and more light would make it surer. Until then mend the outline where it is wrong.',
    ]);
  });
});
