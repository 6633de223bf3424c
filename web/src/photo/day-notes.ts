/** Of every photo from a camera without a time zone: under each of them it would nag. */
const NO_ZONE = /^The camera’s clock told no time zone/;

/** The notes to be read under the photo. */
export function notesUnderPhoto(notes: readonly string[]): string[] {
  return notes.filter((note) => !NO_ZONE.test(note));
}

/** The notes to be read where the day is put right only. */
export function notesOnDay(notes: readonly string[]): string[] {
  return notes.filter((note) => NO_ZONE.test(note));
}
