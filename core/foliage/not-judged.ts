/** Why the colour of leaf was not judged, as a report's notes say it. */
export const NOT_JUDGED = {
  tooLittle:
    'The colour of the leaf could not be told: too little of it is seen, or most of it is in the dark or burnt out. Photograph in even light.',
  byNature:
    'Much of the leaf is yellow, and whether that is the plant’s nature is not known yet. Once its first sittings in good health are kept, its leaf is held against those.',
} as const;

/** The notes among a report's that say so. */
export function whyNotJudged(notes: readonly string[]): string[] {
  const sentences: readonly string[] = Object.values(NOT_JUDGED);
  return notes.filter((note) => sentences.includes(note));
}
