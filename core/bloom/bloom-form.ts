/** How a bloom rises: evenly about its half, or quickly at first and slowly to the full. */
export const RISE_KINDS = ['logistic', 'gompertz'] as const;
export type RiseKind = (typeof RISE_KINDS)[number];

/** How one bloom comes and goes: everything about it but how much of the canopy it covers. Days count from the first reading. */
export interface BloomForm {
  readonly kind: RiseKind;
  /** When half of what will open is open. */
  readonly halfDays: number;
  /** From first colour (5 % open) to full bloom (80 % open). */
  readonly riseDays: number;
  /** From the first day of full bloom until it fades below 80 %. */
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

/** Each curve passes 5 %, half and 80 % at these places, in scales of its own. */
const PLACES: Readonly<Record<RiseKind, { first: number; half: number; full: number }>> = {
  logistic: { first: -Math.log(19), half: 0, full: Math.log(4) },
  gompertz: {
    first: -Math.log(Math.log(20)),
    half: -Math.log(Math.log(2)),
    full: -Math.log(Math.log(5 / 4)),
  },
};

/**
 * Share of the full bloom that is open on a day.
 *
 * @param form of the bloom, days above 0
 * @param days since the first reading
 * @returns 0–1: 0.05 at first colour, 0.5 at half, 0.8 at full bloom, unless it fades before it is full
 *
 * Definition: a logistic or a Gompertz rise times a logistic fall. Full bloom is where four fifths are open: growers name no figure, and nearer to
 * the top the curve is so flat that weekly photos cannot tell the day.
 *
 * Notes: one bloom only. A second flush, or heads taken off, begins a bloom of its own (`bloomStretch`).
 *
 * Reference: Verhulst (1838) and Gompertz (1825) as in `shareOfFinal`; the BBCH scale (Meier 2001, from memory) calls 10 % of flowers open the
 * beginning and 50 % already full flowering, code 65; the product of two for what comes and goes is common in phenology, as in Zhang et al.
 * (2003), Monitoring vegetation phenology using MODIS, who fit one logistic to either side (from memory).
 *
 * Example: a logistic rise of 20 days about day 30 has 0.8 on day 36.4.
 */
export function shareOpen(form: BloomForm, days: number): number {
  return openingOf(form)(days);
}

/** `shareOpen` of one form, for many days. */
export function openingOf(form: BloomForm): (days: number) => number {
  const [risen, left] = [risingOf(form), fadingOf(form)];
  return (days) => risen(days) * left(days);
}

/** Share that has opened, were none to fade: 0–1. */
export function risingOf({
  kind,
  halfDays,
  riseDays,
}: Pick<BloomForm, 'kind' | 'halfDays' | 'riseDays'>): (days: number) => number {
  const { half } = PLACES[kind];
  const scale = riseScaleOf({ kind, riseDays });
  const isLogistic = kind === 'logistic';
  return (days) => {
    const down = Math.exp(-half - (days - halfDays) / scale);
    return isLogistic ? 1 / (1 + down) : Math.exp(-down);
  };
}

/** Share that is left of what has opened: 0–1. */
export function fadingOf(form: BloomForm): (days: number) => number {
  const fall = PLACES.logistic;
  const scale = form.fallDays / (fall.full - fall.first);
  const half = bloomEvents(form).fadingDays + fall.full * scale;
  return (days) => 1 / (1 + Math.exp((days - half) / scale));
}

/** When first colour, half, full bloom and fading come, days since the first reading. */
export function bloomEvents(form: BloomForm): BloomEvents {
  const { halfDays, lastsDays, kind } = form;
  const scale = riseScaleOf(form);
  const { first, half, full } = PLACES[kind];
  const fullDays = halfDays + (full - half) * scale;
  return {
    firstColourDays: halfDays + (first - half) * scale,
    halfDays,
    fullDays,
    fadingDays: fullDays + lastsDays,
  };
}

function riseScaleOf({ kind, riseDays }: Pick<BloomForm, 'kind' | 'riseDays'>): number {
  const { first, full } = PLACES[kind];
  return riseDays / (full - first);
}
