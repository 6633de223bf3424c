/**
 * Measures beside the scores: other ways in use to say how round and how upright a silhouette is. No advice rests on
 * them.
 */
export interface Extras {
  /** Form factor 4πA ÷ P² with Crofton's perimeter, above 0; 1 for a disc (as drawn, 0.99–1.00). */
  readonly circularityCrofton: number;
  /** Area ÷ area of the circumscribed circle, above 0 and at most 1; the square of Wadell's circularity. */
  readonly areaRoundness: number;
  /** Radius of the smallest circle round the whole silhouette, long stems and all. */
  readonly circumscribedRadiusPx: number;
  readonly circumscribedRadiusMm: number | null;
  /** Radius of the largest circle inside the silhouette, gaps filled. */
  readonly inscribedRadiusPx: number;
  readonly inscribedRadiusMm: number | null;
  /** Lean of the line through the rim's middle about which the canopy is most symmetric, right positive; `null` without a pot. */
  readonly bestAxisTiltDeg: number | null;
  /** Mirror symmetry about that line, 0–100, never below the symmetry about the upright; `null` without a pot. */
  readonly bestAxisSymmetry: number | null;
  /** Departures of the form profile from its own least-squares circle; `null` without a ball. */
  readonly deviations: Deviations | null;
}

/** Roundness deviations as ISO 12181-1 names them, px. */
export interface Deviations {
  /** RONt, peak to valley. */
  readonly peakToValleyPx: number;
  /** RONp, highest peak. */
  readonly peakPx: number;
  /** RONv, deepest valley, as a length. */
  readonly valleyPx: number;
  /** RONq, root mean square. */
  readonly rootMeanSquarePx: number;
}
