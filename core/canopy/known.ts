import type { Raster } from '../raster/raster.ts';
import type { EvidenceSource } from './evidence-sources.ts';
import type { LastOutline } from './last-outline.ts';
import type { LearnedColours } from './learned-colours.ts';
import type { Network } from './model/onnx-door.ts';

/** What is known beside the photo when its canopy is cut out. */
export interface KnownOfPlant {
  /** The same stand without a plant, from the same camera place; `null` when there is none. */
  readonly empty: Raster | null;
  /** The trained network; `null` to do without. */
  readonly network: Network | null;
  /** The plant's own colours; `null` before any silhouette was accepted. */
  readonly colours: LearnedColours | null;
  /** The plant's canopy at an earlier sitting; `null` when there is none. */
  readonly lastOutline: LastOutline | null;
  /** Voices that are not heard, for scoring. */
  readonly without?: ReadonlySet<EvidenceSource>;
}

/** Nothing but the photo. */
export const NOTHING_KNOWN: KnownOfPlant = { empty: null, network: null, colours: null, lastOutline: null };
