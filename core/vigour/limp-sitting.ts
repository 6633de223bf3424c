import type { Day } from '../day/day.ts';
import type { PhotoReport } from '../report.ts';
import { statureReading } from './stature-reading.ts';
import {
  looksLimp,
  type NoWiltFinding,
  type StatureReading,
  type WiltFacts,
  type WiltFinding,
} from './wilt.ts';

/** One photo of a sitting that counts. */
export interface StatureView {
  readonly viewId: string;
  readonly day: Day;
  readonly turnDeg: number | null;
  readonly report: PhotoReport;
}

/** What a sitting's photos say together, told by one of them. */
export type SittingWilt =
  | (WiltFinding & { readonly viewId: string })
  | NoWiltFinding
  | { readonly ok: false; readonly reason: 'no-stature'; readonly hint: string };

const NO_STATURE = {
  ok: false,
  reason: 'no-stature',
  hint: 'Whether it hangs cannot be told: its height above the rim is not known in millimetres. Tell the pot’s rim, and photograph it with the rim in sight.',
} as const;

/**
 * Whether a plant looks limp in its newest sitting: most of the sides that can be told say so.
 *
 * @param sitting photos of the newest sitting
 * @param earlier photos of earlier sittings, those left out as limp not among them
 * @returns the finding of the middle one of the sides that agree; or why it cannot be told
 *
 * Notes: a side is held against the same side only, in millimetres, and only where the camera stood as before.
 */
export function limpSitting(
  sitting: readonly StatureView[],
  earlier: readonly StatureView[],
  facts: WiltFacts,
): SittingWilt {
  const findings = sitting.flatMap((view) => {
    const now = readingOf(view);
    if (now === null) return [];
    const before = earlier
      .filter(({ turnDeg }) => turnDeg === view.turnDeg)
      .flatMap((one) => readingOf(one) ?? []);
    return [{ viewId: view.viewId, finding: looksLimp(now, before, facts) }];
  });
  const told = findings.flatMap(({ viewId, finding }) => (finding.ok ? [{ viewId, ...finding }] : []));
  if (told.length === 0) {
    const untold = findings[0]?.finding;
    return untold === undefined || untold.ok ? NO_STATURE : untold;
  }
  const limp = told.filter(({ isLimp }) => isLimp);
  const agreeing = 2 * limp.length > told.length ? limp : told.filter(({ isLimp }) => !isLimp);
  const ordered = [...agreeing].sort((one, other) => one.fallen.middle - other.fallen.middle);
  return ordered[ordered.length >> 1] as (typeof told)[number];
}

function readingOf({ day, report }: StatureView): StatureReading | null {
  const { stature, ball, notCompared } = report;
  // A spread of nothing is one column of leaf, which hangs nowhere.
  if (stature === null || notCompared !== null || stature.spreadPx === 0) return null;
  const plusMinusShare =
    ball?.radiusMm == null || ball.radiusPlusMinusMm === null ? null : ball.radiusPlusMinusMm / ball.radiusMm;
  return statureReading(day, stature, 'mm', plusMinusShare);
}
