import { describe, expect, it } from 'vitest';
import { nameMarks } from '../../../../core/stand/sheet/name-marks.ts';
import { centreOfCircle } from '../../../../core/stand/sheet/paper-map.ts';
import type { RingMark } from '../../../../core/stand/sheet/ring-mark.ts';
import { type SheetGeometry, sheetGeometry } from '../../../../core/stand/sheet/sheet-geometry.ts';
import { mapOfScene, mapped, SCENE, type SheetScene } from './photographed-sheet.ts';

/** The marks as a flawless finder would report them: outer ellipses by mapped points, fitted through their moments. */
function marksSeen(scene: SheetScene, geometry: SheetGeometry, hidden: readonly string[]): RingMark[] {
  const map = mapOfScene(scene, geometry);
  return geometry.marks
    .filter(({ id }) => !hidden.includes(id))
    .map(({ kind, centreMm, radiusMm }) => {
      const centre = centreOfCircle(map, centreMm, radiusMm);
      let [xx, xy, yy] = [0, 0, 0];
      const count = 720;
      for (let k = 0; k < count; k++) {
        const turn = (2 * Math.PI * k) / count;
        const [x, y] = mapped(map, [
          centreMm[0] + radiusMm * Math.cos(turn),
          centreMm[1] + radiusMm * Math.sin(turn),
        ]);
        xx += (2 * (x - centre[0]) ** 2) / count;
        xy += (2 * (x - centre[0]) * (y - centre[1])) / count;
        yy += (2 * (y - centre[1]) ** 2) / count;
      }
      const [middle, spread] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
      const axes = [Math.sqrt(middle + spread), Math.sqrt(middle - spread)] as const;
      return {
        kind,
        centrePx: mapped(map, centreMm),
        radiusPx: axes[0],
        halfAxesPx: axes,
        axisTurnDeg: (Math.atan2(2 * xy, xx - yy) * 90) / Math.PI,
        doubtPx: 0.03,
        edges: [],
      };
    });
}

const TILTS = [0, 20, 40];
const TURNS = [0, 45, 135, 180, 270];

describe.each(['A4', 'Letter'] as const)('naming the marks of a sheet on %s', (paper) => {
  const geometry = sheetGeometry(paper);
  const ids = geometry.marks.map(({ id }) => id);
  const cases = TILTS.flatMap((tiltDeg) =>
    TURNS.map(
      (turnDeg): SheetScene => ({ ...SCENE, paper, tiltDeg, tiltAboutDeg: 30, turnDeg, distanceMm: 900 }),
    ),
  );

  function expectRightNames(scene: SheetScene, hidden: readonly string[]): void {
    const seen = marksSeen(scene, geometry, hidden);
    const named = nameMarks(seen, geometry);
    const where = `tilt ${scene.tiltDeg}, turn ${scene.turnDeg}, hidden ${hidden.join(' ')}`;
    expect(named?.marks.map(({ id }) => id).sort(), where).toEqual(
      ids.filter((id) => !hidden.includes(id)).sort(),
    );
    const map = mapOfScene(scene, geometry);
    for (const { id, centrePx } of named?.marks ?? []) {
      const place = geometry.marks.find((mark) => mark.id === id)?.centreMm ?? [0, 0];
      const [x, y] = mapped(map, place);
      expect(Math.hypot(centrePx[0] - x, centrePx[1] - y), `${where}: ${id}`).toBeLessThan(1e-6);
    }
  }

  it('is right in every turn and tilt with all in sight', () => {
    for (const scene of cases) expectRightNames(scene, []);
  });

  it('is right with any one mark hidden', () => {
    for (const scene of cases) for (const id of ids) expectRightNames(scene, [id]);
  });

  it('is right with any two marks hidden', () => {
    for (const scene of cases) {
      for (const id of ids) for (const other of ids) if (id < other) expectRightNames(scene, [id, other]);
    }
  });

  it('names nothing when only the two dots at the right are left: they are alike from both ends', () => {
    const scene: SheetScene = { ...SCENE, paper };
    expect(
      nameMarks(marksSeen(scene, geometry, ['top-left', 'bottom-left', 'bottom-right']), geometry),
    ).toBeNull();
  });

  it('passes over a mark that is not the sheet’s', () => {
    const scene: SheetScene = { ...SCENE, paper };
    const seen = marksSeen(scene, geometry, []);
    const stray: RingMark = { ...(seen[1] as RingMark), centrePx: [200, 900] };
    expect(
      nameMarks([stray, ...seen], geometry)
        ?.marks.map(({ id }) => id)
        .sort(),
    ).toEqual([...ids].sort());
  });
});
