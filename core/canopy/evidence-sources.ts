/**
 * The voices that are heard on "canopy or not". Each can be left out, so that scoring can say what it brings; in use
 * all that can be had are heard.
 */
export const EVIDENCE_SOURCES = [
  /** How unlike the backdrop's own colours, learned from the photo's border. */
  'backdrop',
  /** How unlike the photo of the empty stand. */
  'empty-photo',
  /** Leaf and petal colours in general, and as met in this very photo. */
  'plant-colour',
  /** The colours of this plant's earlier accepted silhouettes. */
  'learned-colour',
  /** Roughness: leaves are rough, pots and walls smooth. */
  'texture',
  /** Where a plant can be: over and around its pot. */
  'over-pot',
  /** Where the canopy was at the last sitting. */
  'last-outline',
  /** A trained network's first guess. */
  'network',
] as const;
export type EvidenceSource = (typeof EVIDENCE_SOURCES)[number];
