import { describe, expect, it } from 'vitest';
import type { Pot } from '../../../../core/canopy/found-plant.ts';
import { collarInReport, collarNotes, collarOnPot } from '../../../../core/turned/collar/collar-in-report.ts';
import type { CollarReading } from '../../../../core/turned/collar/read-collar.ts';
import { photographCollar } from './photographed-collar.ts';

const READ: CollarReading = { ok: true, turnDeg: 92, plusMinusDeg: 2, marksRead: 20, agreement: 1 };
const UNCLEAR = { ok: false, reason: 'unclear', hint: 'Lift the leaves.' } as const;
const NONE = { ok: false, reason: 'none', hint: null } as const;
const UNTOLD = { rimMm: null, cameraDistanceMm: null };

function potAt([x, y]: readonly [number, number], halfWidthPx: number): Pot {
  return {
    rimLeftPx: [x - halfWidthPx, y],
    rimRightPx: [x + halfWidthPx, y],
    rim: { centrePx: [x, y], halfWidthPx, halfHeightPx: 0, heightSeen: false },
    rimDoubtPx: 1,
    rimTaper: 0,
  };
}

describe('the turn collar in the report', () => {
  it('is told with its plus-minus and the steps read', () => {
    expect(collarInReport(READ)).toEqual({ turnDeg: 92, plusMinusDeg: 2, marks: 20 });
  });

  it('is null without a sure reading', () => {
    for (const none of [null, NONE, UNCLEAR]) expect(collarInReport(none)).toBeNull();
  });

  it('says nothing of a pot without one, and what to do where it cannot be read', () => {
    expect(collarNotes(null, 0)).toEqual([]);
    expect(collarNotes(NONE, 0)).toEqual([]);
    expect(collarNotes(UNCLEAR, null)).toEqual(['Lift the leaves.']);
  });

  it('agrees in silence with a turn told about right, or not told', () => {
    for (const told of [null, 90, 100, 80, 450]) expect(collarNotes(READ, told)).toEqual([]);
  });

  it('warns of a turn told an eighth wrong', () => {
    expect(collarNotes(READ, 45)).toEqual([
      'The turn collar shows the 3 o’clock side to the camera (92°), but 45° was told. Check the turn.',
    ]);
  });

  it('is read on the pot that was found, the sharper the more is known of the camera', () => {
    const { raster, rim } = photographCollar({ turnDeg: 30, distanceMm: 800 });
    const pot = potAt(rim.centrePx, rim.halfWidthPx);
    for (const known of [UNTOLD, { rimMm: 130, cameraDistanceMm: 800 }]) {
      const reading = collarOnPot(raster, pot, known);
      expect(reading?.ok && Math.abs(reading.turnDeg - 30)).toBeLessThan(1.5);
    }
  });

  it('is not looked for without a pot, nor on one without width', () => {
    const { raster } = photographCollar({ pxPerMm: 1.4 });
    expect(collarOnPot(raster, null, UNTOLD)).toBeNull();
    expect(collarOnPot(raster, potAt([50, 50], 0), UNTOLD)).toBeNull();
  });
});
