import type { Sureness } from '../advice/advice.ts';
import type { PointPx } from '../raster/raster.ts';
import type { LongStem, PhotoReport } from '../report.ts';
import type { Stem3D } from '../stems/stem-3d.ts';
import { clockOfAzimuth } from '../turned/clock-of-azimuth.ts';
import type { PlantPoint } from '../turned/turned-view.ts';
import type { Cut, StopDepth } from './cut.ts';
import { inWorkingOrder } from './working-order.ts';

/** What the list is made from. The ball to cut to is about the present ball's centre; `null`: even up to the present ball. */
export type CutListRequest =
  | {
      readonly from: 'one-photo';
      readonly report: Pick<PhotoReport, 'longStems' | 'ball' | 'scale' | 'axis'>;
      readonly ball: { readonly radiusMm: number } | null;
    }
  | {
      readonly from: 'turned';
      readonly stems: readonly Stem3D[];
      /** The plant's ball as its report gives it, mm. */
      readonly present: { readonly centreMm: PlantPoint; readonly radiusMm: number };
      readonly ball: { readonly radiusMm: number } | null;
    };

/** A tip stop takes no more than this, mm: the soft tip with a joint or two. Our own choice; no published figure was found. */
export const TIP_STOP_MOST_MM = 30;
/** The same where there is no scale, % of the ball's radius. */
const TIP_STOP_MOST_PERCENT = 20;
/** Nobody cuts finer than this on a living plant, mm, or % of the ball's radius without a scale. */
const LEAST_CUT_MM = 5;
const LEAST_CUT_PERCENT = 3;

/**
 * The stems to shorten, in the order of working round the plant.
 *
 * @param request stems of one photo's report or of a turned sitting, with the ball to cut to
 * @returns cuts; `[]` when nothing stands outside the ball to cut to
 *
 * How: evened up, a stem ends where the other tips do, so what goes is its excess. A smaller ball takes the difference of the two balls
 * more, a larger one so much less; a stem that it holds is left alone.
 *
 * Notes: a ball smaller than the plant means that every shoot is shortened, not only the long ones: `ballToCutTo` says so in words.
 *
 * Example: a stem of 40 mm excess on a ball of 150 mm, cut to 160 mm, loses 30 mm.
 */
export function cutList(request: CutListRequest): Cut[] {
  const cuts = request.from === 'one-photo' ? cutsInPhoto(request) : cutsOnPlant(request);
  return inWorkingOrder(named(cuts));
}

function cutsInPhoto({ report, ball }: CutListRequest & { from: 'one-photo' }): Omit<Cut, 'id'>[] {
  const present = report.ball;
  if (present === null) return [];
  return report.longStems.flatMap((stem): Omit<Cut, 'id'>[] => {
    const smallerMm = ball === null || present.radiusMm === null ? 0 : present.radiusMm - ball.radiusMm;
    const takeOffMm = stem.excessMm === null ? null : stem.excessMm + smallerMm;
    const takeOffPercent =
      takeOffMm === null || present.radiusMm === null
        ? (100 * stem.excessPx) / present.radiusPx
        : (100 * takeOffMm) / present.radiusMm;
    if (!worthCutting(takeOffMm, takeOffPercent)) return [];
    const share = present.radiusMm === null ? 1 : 1 - smallerMm / present.radiusMm;
    const cutPx = outFrom(present.centrePx, stem.cutPx, share);
    return [
      {
        azimuthDeg: null,
        clockFromAbove: null,
        clockInPhoto: stem.clock,
        heightMm:
          report.scale === null || report.axis === null
            ? null
            : ((report.axis.rimLeftPx[1] + report.axis.rimRightPx[1]) / 2 - cutPx[1]) * report.scale.mmPerPx,
        excessMm: stem.excessMm,
        plusMinusMm: present.radiusPlusMinusMm,
        takeOffMm,
        takeOffPercent,
        stop: stopOf(takeOffMm, takeOffPercent),
        kind: stem.kind,
        tipPx: stem.tipPx,
        cutPx,
        tipMm: null,
        cutMm: null,
        aboveShootPx: null,
        why: whyInPhoto(stem, ball !== null),
        sure: stem.kind === 'shoot' ? 'likely' : 'unsure',
      },
    ];
  });
}

function cutsOnPlant({ stems, present, ball }: CutListRequest & { from: 'turned' }): Omit<Cut, 'id'>[] {
  const smallerMm = ball === null ? 0 : present.radiusMm - ball.radiusMm;
  return stems.flatMap((stem): Omit<Cut, 'id'>[] => {
    const takeOffMm = stem.excessMm + smallerMm;
    const takeOffPercent = (100 * takeOffMm) / present.radiusMm;
    if (!worthCutting(takeOffMm, takeOffPercent)) return [];
    const cutMm = movedIn(stem.tipMm, present.centreMm, takeOffMm);
    return [
      {
        azimuthDeg: stem.azimuthDeg,
        clockFromAbove: clockOfAzimuth(stem.azimuthDeg),
        clockInPhoto: null,
        heightMm: cutMm[2],
        excessMm: stem.excessMm,
        plusMinusMm: stem.plusMinusMm,
        takeOffMm,
        takeOffPercent,
        stop: stopOf(takeOffMm, takeOffPercent),
        kind: stem.kind,
        tipPx: null,
        cutPx: null,
        tipMm: stem.tipMm,
        cutMm,
        aboveShootPx: null,
        why: whyOnPlant(stem, ball !== null),
        sure: surenessOf(stem),
      },
    ];
  });
}

function worthCutting(takeOffMm: number | null, takeOffPercent: number): boolean {
  return takeOffMm === null ? takeOffPercent >= LEAST_CUT_PERCENT : takeOffMm >= LEAST_CUT_MM;
}

function stopOf(takeOffMm: number | null, takeOffPercent: number): StopDepth {
  const tip = takeOffMm === null ? takeOffPercent <= TIP_STOP_MOST_PERCENT : takeOffMm <= TIP_STOP_MOST_MM;
  return tip ? 'tip' : 'deep';
}

function surenessOf({ unsure, excessMm, plusMinusMm, kind }: Stem3D): Sureness {
  if (unsure || excessMm <= plusMinusMm) return 'unsure';
  return kind === 'shoot' && excessMm > 2 * plusMinusMm ? 'sure' : 'likely';
}

function whyInPhoto({ excessMm, kind }: LongStem, toOtherBall: boolean): string {
  const howFar = excessMm === null ? '' : ` by ${Math.round(excessMm)} mm`;
  return `${standing(kind)} beyond where the other tips end${howFar}.${otherBall(toOtherBall)} One photo shows no depth, and a leaf that only leans out needs no cut: look first.`;
}

function whyOnPlant({ excessMm, plusMinusMm, kind, seenIn, unsure }: Stem3D, toOtherBall: boolean): string {
  const seen = unsure
    ? 'Only one view shows its tip, so its place is unsure: look first.'
    : `${seenIn.length} views show its tip.`;
  return `${standing(kind)} ${Math.round(excessMm)} mm (± ${Math.round(plusMinusMm)}) beyond where the other tips end.${otherBall(toOtherBall)} ${seen}`;
}

function standing(kind: LongStem['kind']): string {
  return kind === 'shoot' ? 'Its tip stands' : 'This broad shoulder stands';
}

function otherBall(toOtherBall: boolean): string {
  return toOtherBall ? ' What is to come off reaches to the ball to cut to.' : '';
}

/** A place seen from the centre at a share of its distance. */
function outFrom([cx, cy]: PointPx, [x, y]: PointPx, share: number): PointPx {
  return [cx + share * (x - cx), cy + share * (y - cy)];
}

function movedIn([u, v, h]: PlantPoint, [cu, cv, ch]: PlantPoint, byMm: number): PlantPoint {
  const away = Math.hypot(u - cu, v - cv, h - ch);
  const share = away === 0 ? 0 : byMm / away;
  return [u - share * (u - cu), v - share * (v - cv), h - share * (h - ch)];
}

/** Names each cut by its place; a second one at the same place counts on. */
function named(cuts: readonly Omit<Cut, 'id'>[]): Cut[] {
  const used = new Map<string, number>();
  return cuts.map((cut) => {
    const place =
      cut.tipMm === null || cut.azimuthDeg === null
        ? `photo-${cut.tipPx?.map(Math.round).join('-')}`
        : `plant-${Math.round(cut.azimuthDeg)}-${Math.round(cut.tipMm[2])}`;
    const count = (used.get(place) ?? 0) + 1;
    used.set(place, count);
    return { ...cut, id: count === 1 ? place : `${place}-${count}` };
  });
}
