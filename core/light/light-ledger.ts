import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { circularSummary, radOf, turnBetween, wholeTurn } from '../turned/circular-statistics.ts';
import { sideWords } from '../turned/place-words.ts';

/** A turn as the grower recorded it. */
export interface TurnEvent {
  readonly day: Day;
  /** Azimuth of the plant that faces the light from that day on, degrees. */
  readonly facesLightDeg: number;
}

/** How much light one eighth of the plant has had. */
export interface LitSide {
  /** 0, 45 … 315. */
  readonly azimuthDeg: number;
  /** Whole days on which this eighth faced the light. */
  readonly daysFaced: number;
  /** Days, each counted by how squarely the side faced the light: 1 straight, 0.71 at an eighth, 0 from a quarter on. */
  readonly lightDays: number;
}

export interface LightLedger {
  /** `null` while no turn is recorded. */
  readonly nowFacesDeg: number | null;
  /** Day of the last turn. */
  readonly sinceDay: Day | null;
  readonly daysSinceTurn: number | null;
  /** First day that is counted. */
  readonly fromDay: Day | null;
  /** Eight sides, azimuth 0 first. */
  readonly sides: readonly LitSide[];
  /** The side that has had the least light; `null` when none has had less than the others. */
  readonly gapAzimuthDeg: number | null;
  /** Light of the least lit quarter ÷ the mean of all: 0 one side only, 1 all alike; `null` before a whole day is on record. */
  readonly evenness: number | null;
  readonly why: string;
}

/**
 * How far back light is counted, days: two rounds of a quarter turn a week. What grew before has set; no source, our choice.
 */
export const LEDGER_DAYS = 56;

/** Sides that have had at least this share of the mean are alike. */
const ALIKE_FROM = 0.95;
const EIGHTHS = Array.from({ length: 8 }, (_, k) => 45 * k);

/**
 * Adds up which side has faced the light for how long.
 *
 * @param turns in the order recorded; several on one day: the last one holds; turns after today are left out
 * @param today not counted itself: only whole days are
 * @param lastDays how far back to count; `null` for the whole record
 *
 * Notes: days are counted by date. How the plant stood before its first turn on record is not known and not counted. The gap is
 * looked for in quarters (each side with half of its neighbours), so that four quarter turns come out even.
 *
 * Example: turned to 0 on the 1st and to 90 on the 8th, on the 15th sides 0 and 90 have faced the light for 7 days each, side 45 has had
 * 9.9 light days, and the gap is at 225.
 */
export function lightLedger(
  turns: readonly TurnEvent[],
  today: Day,
  lastDays: number | null = LEDGER_DAYS,
): LightLedger {
  const past = turnsUntil(turns, today);
  const last = past.at(-1);
  const first = past[0];
  if (last === undefined || first === undefined) {
    return {
      nowFacesDeg: null,
      sinceDay: null,
      daysSinceTurn: null,
      fromDay: null,
      sides: EIGHTHS.map((azimuthDeg) => ({ azimuthDeg, daysFaced: 0, lightDays: 0 })),
      gapAzimuthDeg: null,
      evenness: null,
      why: 'No turn is on record yet: record which side faces the light today, and the days are counted from then on.',
    };
  }
  const earliest = lastDays === null ? first.day : addDays(today, -lastDays);
  const fromDay = daysBetween(first.day, earliest) > 0 ? earliest : first.day;
  const sides = litSides(stays(past, fromDay, today));
  const { gapAzimuthDeg, evenness } = gapOf(sides);
  return {
    nowFacesDeg: wholeTurn(last.facesLightDeg),
    sinceDay: last.day,
    daysSinceTurn: daysBetween(last.day, today),
    fromDay,
    sides,
    gapAzimuthDeg,
    evenness,
    why: whyOf(fromDay, fromDay === first.day, gapAzimuthDeg, evenness),
  };
}

/** By day, the last of each day only. */
function turnsUntil(turns: readonly TurnEvent[], today: Day): TurnEvent[] {
  const byDay = new Map<Day, TurnEvent>();
  for (const turn of turns) if (daysBetween(turn.day, today) >= 0) byDay.set(turn.day, turn);
  return [...byDay.values()].sort((one, other) => daysBetween(other.day, one.day));
}

interface Stay {
  readonly facesLightDeg: number;
  readonly days: number;
}

/** How long each turn lasted between two days. */
function stays(turns: readonly TurnEvent[], fromDay: Day, today: Day): Stay[] {
  return turns.map(({ day, facesLightDeg }, k) => {
    const until = turns[k + 1]?.day ?? today;
    const begin = daysBetween(day, fromDay) > 0 ? fromDay : day;
    return { facesLightDeg, days: Math.max(0, daysBetween(begin, until)) };
  });
}

function litSides(all: readonly Stay[]): LitSide[] {
  return EIGHTHS.map((azimuthDeg) => {
    let [daysFaced, lightDays] = [0, 0];
    for (const { facesLightDeg, days } of all) {
      if (eighthOf(facesLightDeg) === azimuthDeg) daysFaced += days;
      lightDays += days * Math.max(0, Math.cos(radOf(turnBetween(facesLightDeg, azimuthDeg))));
    }
    return { azimuthDeg, daysFaced, lightDays };
  });
}

function eighthOf(azimuthDeg: number): number {
  return (45 * Math.round(wholeTurn(azimuthDeg) / 45)) % 360;
}

/** The least lit quarter; of several alike the middle of them, or none when they lie all round. */
function gapOf(sides: readonly LitSide[]): Pick<LightLedger, 'gapAzimuthDeg' | 'evenness'> {
  const light = (k: number) => (sides.at(k % 8) as LitSide).lightDays;
  const quarters = sides.map((_, k) => light(k + 7) / 4 + light(k) / 2 + light(k + 1) / 4);
  const mean = quarters.reduce((sum, one) => sum + one, 0) / 8;
  if (mean === 0) return { gapAzimuthDeg: null, evenness: null };
  const least = Math.min(...quarters);
  const evenness = least / mean;
  if (evenness >= ALIKE_FROM) return { gapAzimuthDeg: null, evenness };
  const darkest = EIGHTHS.filter((_, k) => (quarters[k] as number) <= least + 1e-9 * mean);
  const middle = circularSummary(darkest).meanDeg;
  return { gapAzimuthDeg: middle === null ? (darkest[0] as number) : eighthOf(middle), evenness };
}

function whyOf(fromDay: Day, isFirst: boolean, gap: number | null, evenness: number | null): string {
  const before = isFirst ? ' How it stood before that is not known.' : '';
  if (evenness === null) return `Counted from ${dayInWords(fromDay)}: no whole day yet.${before}`;
  if (gap === null) return `Since ${dayInWords(fromDay)} all sides have had about the same light.${before}`;
  return `Since ${dayInWords(fromDay)} ${sideWords(gap)} has had the least light.${before}`;
}
