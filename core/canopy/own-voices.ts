import type { OpenCvDoor } from '../opencv/door.ts';
import type { LabPicture } from '../raster/lab.ts';
import { type Evidence, joinEvidence, voiced } from './evidence.ts';
import type { EvidenceSource } from './evidence-sources.ts';
import type { KnownOfPlant } from './known.ts';
import { lastOutlineEvidence } from './last-outline.ts';
import type { RimEnds } from './lay-over.ts';
import { learnedColourEvidence } from './learned-colours.ts';

/** How loud the plant's own colours are: neighbouring pixels err together, so a pixel is worth less than it says. */
const COLOUR_WEIGHT = 0.6;

/**
 * Joins what is known of this very plant to what the other voices say.
 *
 * @param seen what the other voices say, of the decision copy's size
 * @param rim rim ends, px of the decision copy; `null` when not known
 */
export type OwnVoices = (seen: Evidence, rim: RimEnds | null) => Evidence;

/** The voices of the plant's own colours and of its last outline; `null` when neither can be heard. */
export function ownVoices(
  door: OpenCvDoor,
  picture: LabPicture,
  { colours, lastOutline }: Pick<KnownOfPlant, 'colours' | 'lastOutline'>,
  without: ReadonlySet<EvidenceSource>,
): OwnVoices | null {
  const last = without.has('last-outline') ? null : lastOutline;
  const byColour =
    colours === null || without.has('learned-colour')
      ? null
      : voiced(learnedColourEvidence(picture, colours), COLOUR_WEIGHT);
  if (last === null && byColour === null) return null;
  return (seen, rim) => {
    const coloured = byColour === null ? seen : joinEvidence(seen, byColour);
    if (last === null) return coloured;
    return joinEvidence(coloured, lastOutlineEvidence(door, last, picture, rim, coloured));
  };
}
