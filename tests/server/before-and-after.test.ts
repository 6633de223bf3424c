import { describe, expect, it } from 'vitest';
import { LOBE } from '../../core/cut/cut-away.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import { maskToClearPng } from '../../server/intake/encode-picture.ts';
import { foretellCuts } from '../../server/measuring/foretell-cuts.ts';
import { type CutList, cutListSchema } from '../../server/schemas/cuts.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { drawMask } from '../core/drawn-shapes.ts';
import { longStem, placedStem, reportWithStems } from './fixtures/long-stems.ts';
import { type BenchOptions, openBench, sampleMeasurement } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';
import { turnedReport } from './fixtures/turned-report.ts';

/** The ball of the reports here, and the photo they tell of. */
const [MIDDLE, RADIUS, WIDTH, HEIGHT] = [[320, 200] as PointPx, 100, 640, 480];
const STEMS = [longStem(3, 60), longStem(12, 45)];

/** A disc on its pot with a bar to each stem's tip, at half the photo's size. */
function canopy() {
  return drawMask(WIDTH / 2, HEIGHT / 2, (x, y) => {
    const [dx, dy] = [2 * x - MIDDLE[0], 2 * y - MIDDLE[1]];
    return (
      Math.hypot(dx, dy) <= RADIUS ||
      STEMS.some(({ tipPx }) => {
        const [tx, ty] = [tipPx[0] - MIDDLE[0], tipPx[1] - MIDDLE[1]];
        const out = Math.hypot(tx, ty);
        const along = (dx * tx + dy * ty) / out;
        return along > 0 && along <= out && Math.abs(dx * ty - dy * tx) / out < 14;
      })
    );
  });
}

async function bench(turns: readonly number[], options: BenchOptions = {}) {
  const maskPng = await maskToClearPng(canopy());
  const opened = await openBench({
    measure: async (task) => ({
      ...sampleMeasurement(task),
      report: reportWithStems(STEMS, { turnDeg: task.turnDeg }),
      maskPng,
    }),
    join: async () => turnedReport(),
    foretell: foretellCuts,
    ...options,
  });
  const { addPlant, upload, send, services } = opened;
  const plant = await addPlant();
  for (const [k, turn] of turns.entries()) {
    const files = [{ name: `${turn}.jpg`, bytes: await plantJpeg(k + 1) }];
    await upload(plant.id, files, { day: '2026-05-31', turnDeg: String(turn) });
    await services.queue.whenIdle();
  }
  const page = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  const path = `/api/sittings/${page.sittings[0]?.id}`;
  const list = async () => cutListSchema.parse((await send('GET', `${path}/cut-list`)).body);
  const mark = async (cut: CutList['cuts'][number] | undefined, change: object) =>
    cutListSchema.parse((await send('PATCH', `${path}/cuts/${cut?.id}`, change)).body);
  return { ...opened, list, mark };
}

describe('before and after the cuts of one photo', () => {
  it('begins with the report’s own scores and foretells them for all cuts', async () => {
    const { list } = await bench([0]);
    const { before, after, views, lean, outlinesAfter, cuts, viewIds } = await list();
    const report = reportWithStems(STEMS);
    expect(before).toEqual({
      roundness: report.roundness,
      symmetry: report.symmetry,
      lopsidedness: report.lopsidedness,
    });
    expect(after?.roundness?.score).toBeGreaterThan((before.roundness?.score ?? 0) + 3);
    expect(after?.roundness?.plusMinus).toBeGreaterThan(before.roundness?.plusMinus ?? 0);
    expect(after?.lopsidedness?.percent).toBeLessThan(before.lopsidedness?.percent ?? 0);
    expect([lean, views.map(({ viewId }) => viewId)]).toEqual([null, viewIds]);
    // Where the bars stood, the outline after is that of the ball and the leaves just below the cuts, in px of the photo.
    const outs = outlinesAfter[0]?.outlinePx.map(([x, y]) => Math.hypot(x - MIDDLE[0], y - MIDDLE[1])) ?? [];
    expect(Math.max(...outs)).toBeLessThan((1 + LOBE.leavesLeft) * RADIUS + 3);
    const marks = cuts.flatMap((cut) => cut.marks);
    expect(marks.map(({ tipPx }) => tipPx.map(Math.round))).toEqual(
      cuts.map(({ tipPx }) => tipPx?.map(Math.round)),
    );
  });

  it('changes at once when a cut is unticked, skipped, and taken back', async () => {
    const { list, mark } = await bench([0]);
    const whole = await list();
    const [twelve, three] = whole.cuts;
    const one = await mark(twelve, { chosen: false });
    const none = await mark(three, { state: 'skipped' });
    const rounds = [whole, one, none].map(({ after }) => after?.roundness?.score ?? 0);
    expect(rounds[0]).toBeGreaterThan(rounds[1] as number);
    expect(rounds[1]).toBeGreaterThan(rounds[2] as number);
    expect(none.after).toEqual(none.before);
    const again = await mark(three, { state: 'open' });
    expect(again.after).toEqual(one.after);
  });

  it('says why when there is nothing to foretell', async () => {
    const { list } = await bench([0], { foretell: async () => null });
    const { after, afterWhyNot, outlinesAfter, cuts } = await list();
    expect([after, outlinesAfter]).toEqual([null, []]);
    expect(afterWhyNot).toContain('fixes no ball');
    expect(cuts.every(({ marks }) => marks.length === 1)).toBe(true);
  });
});

describe('before and after the cuts of a turned sitting', () => {
  it('tells each view, their mean and the lopsidedness in the round, and draws a cut where it shows', async () => {
    const { list } = await bench([0, 90], {
      stems: async () => ({
        stems: [placedStem(90, 60)],
        crown: { centre: [0, 18, 80], radius: 150 },
        notes: [],
      }),
    });
    const { before, after, views, lean, outlinesAfter, cuts, viewIds, from } = await list();
    expect(from).toBe('turned');
    expect(views.map(({ viewId }) => viewId)).toEqual(viewIds);
    expect(outlinesAfter.map(({ viewId }) => viewId)).toEqual(viewIds);
    const mean = views.reduce((sum, view) => sum + (view.after?.roundness?.score ?? 0), 0) / views.length;
    expect(after?.roundness?.score).toBeCloseTo(mean, 6);
    expect([before.lopsidedness, after?.lopsidedness]).toEqual([null, null]);
    expect(lean?.before).not.toBeNull();
    // At azimuth 90 it stands at the right of the view from the mark, and points to the camera of the other.
    const marks = cuts[0]?.marks ?? [];
    expect(marks.map(({ viewId }) => viewId)).toEqual([viewIds[0]]);
    expect(marks[0]?.tipPx[0]).toBeGreaterThan(MIDDLE[0] + RADIUS);
  });
});
