import type { View } from '../../../server/schemas/sitting.ts';

export type UnsureZone = View['drawing']['unsure'][number];

/** Below this the outline is called doubtful, and what would help stands beside it. */
const DOUBTFUL = 0.9;

export function isDoubtful(confidence: number | null): boolean {
  return confidence !== null && confidence < DOUBTFUL;
}

/** "about 96 % sure"; never 100, which no photo allows. */
export function sureWords(confidence: number): string {
  return `about ${Math.min(Math.round(confidence * 100), 99)} % sure`;
}

export const SURE_MEANING =
  'How far the outline can be trusted: the overlap with the true canopy that is to be expected. Overlap is the area that both share ÷ the area of both together, so 100 % would be the true canopy to the last leaf.';

export const ACCEPT_MEANING =
  'It teaches Rondure this plant’s own colours, and next week’s photo from this stand starts from this outline. Say it only of an outline you have looked at all the way round. You can take it back.';

/** What an unsure zone says when it is tapped. */
export function unsureWords({ chance, inCanopy }: UnsureZone): string {
  return `May be leaf, may not: ${chanceWords(chance)} leaf. It is ${inCanopy ? '' : 'not '}counted as canopy; the plus-minus includes it.`;
}

/** "about 60 %": in steps of five, since the chance is itself a guess. */
export function chanceWords(chance: number): string {
  return `about ${Math.min(Math.max(Math.round(chance * 20) * 5, 5), 95)} %`;
}
