import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { decidePlant } from '../../../core/canopy/decide-plant.ts';
import { gatherEvidence } from '../../../core/canopy/gather-evidence.ts';
import { type KnownOfPlant, NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { type LearnedColours, learnColours } from '../../../core/canopy/learned-colours.ts';
import { type Network, openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import { nextStroke } from '../../score/simulated-hand.ts';
import { type AwkwardView, awkwardView } from './awkward-series.ts';
import { overlap } from './painted-plant.ts';

/** Overlap at which the simulated grower is content, and the most strokes she draws. */
const CONTENT = 0.96;
const MOST_STROKES = 6;

let door: OpenCvDoor;
let network: Network;
beforeAll(async () => {
  door = await openOpenCv();
  const weights = new URL('../../../core/canopy/model/first-guess.onnx', import.meta.url);
  network = await openNetwork(await readFile(weights));
});

/** How a photo comes out unaided, and the strokes until the grower is content. A refused photo overlaps by 0. */
async function mend(view: AwkwardView, known: KnownOfPlant): Promise<{ unaided: number; strokes: number }> {
  const gathered = await gatherEvidence(view.raster, known);
  if (!gathered.ok) return { unaided: 0, strokes: MOST_STROKES };
  const strokes: Stroke[] = [];
  let unaided: number | null = null;
  while (strokes.length < MOST_STROKES) {
    const found = decidePlant(gathered, strokes);
    const iou = found.ok ? overlap(found.canopy, view.mask) : 0;
    unaided ??= iou;
    if (!found.ok || iou >= CONTENT) break;
    const stroke = nextStroke(door, found.canopy, view.mask);
    if (stroke === null) break;
    strokes.push(stroke);
  }
  return { unaided: unaided ?? 0, strokes: strokes.length };
}

/** What the accepted photos teach of the plant: all of them its colours, the last one its outline, a week ago. */
function known(accepted: readonly AwkwardView[]): Pick<KnownOfPlant, 'colours' | 'lastOutline'> {
  let colours: LearnedColours | null = null;
  for (const { raster, mask } of accepted) colours = learnColours(colours, raster, mask);
  const last = accepted.at(-1);
  return { colours, lastOutline: last === undefined ? null : { canopy: last.mask, pot: null, days: 7 } };
}

describe.each(['bronze', 'variegated'] as const)('a %s plant among green ones, week after week', (leaf) => {
  const weeks: AwkwardView[] = [];
  beforeAll(() => {
    for (const week of [3, 4, 5, 6]) weeks.push(awkwardView(leaf, week, { stops: week % 2 ? 0 : -0.6 }));
  });

  it('is cut out better unaided, and needs fewer strokes, after each accepted photo', async () => {
    for (let week = 1; week < weeks.length; week++) {
      const view = weeks[week] as AwkwardView;
      const alone = await mend(view, NOTHING_KNOWN);
      const learned = await mend(view, { ...NOTHING_KNOWN, ...known(weeks.slice(0, week)) });
      expect(learned.unaided).toBeGreaterThan(alone.unaided);
      expect(learned.unaided).toBeGreaterThan(0.93);
      expect(learned.strokes).toBeLessThan(alone.strokes);
    }
  });

  it('is cut out better with the network too', async () => {
    const view = weeks[3] as AwkwardView;
    const alone = await mend(view, { ...NOTHING_KNOWN, network });
    const learned = await mend(view, { ...NOTHING_KNOWN, network, ...known(weeks.slice(0, 3)) });
    expect(learned.unaided).toBeGreaterThan(alone.unaided);
    expect(learned.unaided).toBeGreaterThan(0.93);
  });

  it('is found as cut when it was cut back hard after the last accepted photo', async () => {
    const view = awkwardView(leaf, 6, { cutBackMm: 70 });
    const before = weeks[3] as AwkwardView;
    const { unaided } = await mend(view, { ...NOTHING_KNOWN, network, ...known([before]) });
    expect(overlap(before.mask, view.mask)).toBeLessThan(0.5);
    expect(unaided).toBeGreaterThan(0.85);
  });
});
