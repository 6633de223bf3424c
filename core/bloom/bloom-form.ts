/** How one bloom comes and goes: everything about it but how much of the canopy it covers. Days count from the first reading. */
export interface BloomForm {
  /** When half of what will open is open. */
  readonly halfDays: number;
  /** From first colour (5 %) to full bloom (90 %). */
  readonly riseDays: number;
  /** From the first day of full bloom until it fades below 90 %. */
  readonly lastsDays: number;
  /** From there until 5 % are left. */
  readonly fallDays: number;
}

/** The days of a bloom that a grower notes. */
export interface BloomEvents {
  readonly firstColourDays: number;
  readonly halfDays: number;
  readonly fullDays: number;
  readonly fadingDays: number;
}

/** A logistic curve passes 5 % and 90 % so many of its scales before and after its half. */
const TO_FIRST = Math.log(19);
const TO_FULL = Math.log(9);
const SCALES_A_RISE = TO_FIRST + TO_FULL;

/**
 * Share of the full bloom that is open on a day.
 *
 * @param form of the bloom, days above 0
 * @param days since the first reading
 * @returns 0–1: 0.05 at first colour, 0.5 at half, 0.9 at full bloom, unless it fades before it is full
 *
 * Definition: a logistic rise times a logistic fall.
 *
 * Notes: one bloom only. A second flush, or heads taken off, begins a bloom of its own (`bloomStretch`).
 *
 * Reference: Verhulst (1838) for the logistic; the product of two for what comes and goes is common in phenology, as in Zhang et al.
 * (2003), Monitoring vegetation phenology using MODIS, who fit one logistic to either side (from memory).
 *
 * Example: a rise of 20 days about day 30 has 0.9 on day 38.5.
 */
export function shareOpen(form: BloomForm, days: number): number {
  return openingOf(form)(days);
}

/** `shareOpen` of one form, for many days. */
export function openingOf(form: BloomForm): (days: number) => number {
  const riseScale = form.riseDays / SCALES_A_RISE;
  const fallScale = form.fallDays / SCALES_A_RISE;
  const fallHalf = bloomEvents(form).fadingDays + TO_FULL * fallScale;
  return (days) =>
    1 / ((1 + Math.exp((form.halfDays - days) / riseScale)) * (1 + Math.exp((days - fallHalf) / fallScale)));
}

/** When first colour, half, full bloom and fading come, days since the first reading. */
export function bloomEvents({ halfDays, riseDays, lastsDays }: BloomForm): BloomEvents {
  const scale = riseDays / SCALES_A_RISE;
  const fullDays = halfDays + TO_FULL * scale;
  return {
    firstColourDays: halfDays - TO_FIRST * scale,
    halfDays,
    fullDays,
    fadingDays: fullDays + lastsDays,
  };
}
