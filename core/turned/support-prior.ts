/**
 * How much a bushy plant's reach swings round the pot, before any photo: standard deviation of each harmonic (1 once a turn, 2 twice, …),
 * % of the ball's radius. Measured on simulated leafy plants with and without lobes (whole plant 1.9, 1.9, 1.8, 1.6, 1.5, 1.0;
 * bands of height 2–8, 2–3.4, 2–2.9, 1.4–1.7, 1.1, 0.8), the first two raised for plants that lean or are oval.
 */
const SWING_PERCENT = [6, 3.5, 2.3, 1.6, 1.2, 0.85, 0.6, 0.4] as const;
/** Standard deviation of the ring's size about the ball's radius, %: wide, so that the photos decide. */
const SIZE_PERCENT = 50;

/**
 * Covariance of the reach at two azimuths, %² of the ball's radius, with or without the ring's size.
 *
 * @param apartRad angle between the azimuths
 *
 * Reference: a stationary random function on the circle has a covariance of cosines with positive weights (Schoenberg 1942).
 */
export function reachCovariance(apartRad: number): number {
  return SIZE_PERCENT ** 2 + swingCovariance(apartRad);
}

/** The same without the ring's size. */
function swingCovariance(apartRad: number): number {
  return SWING_PERCENT.reduce((sum, swing, k) => sum + swing * swing * Math.cos((k + 1) * apartRad), 0);
}
