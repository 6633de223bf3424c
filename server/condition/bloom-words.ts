import type { BloomOffer, OfferedEvent } from '../../core/bloom/bloom-offers.ts';
import { bloomWordsOf, dropBloomWord, keepBloomWord } from '../store/bloom-words.ts';
import type { Database } from '../store/database.ts';
import { addNote, changeNote, noteById, setNoteRemoved } from '../store/notes.ts';

/** Said beside a date that the grower did not note by eye. */
const BY_PHOTOS = 'By the curve through the photos.';

/** Keeps the grower's word on an offered date; with a yes it goes to the log. The entry's id, `null` after a no. */
export function answerOffer(
  db: Database,
  plantId: string,
  { event, logKind, day, movesNoteId }: BloomOffer,
  said: 'yes' | 'no',
): string | null {
  const moved = movesNoteId === null ? null : noteById(db, movesNoteId);
  if (said === 'no') {
    // The entry of an earlier yes stays as it is.
    keepBloomWord(db, plantId, { event, said, day, noteId: null, movedFrom: null });
    return null;
  }
  if (moved !== null) changeNote(db, moved.id, { ...moved, day });
  const noteId = moved?.id ?? addNote(db, plantId, { day, kind: logKind, text: BY_PHOTOS });
  keepBloomWord(db, plantId, { event, said, day, noteId, movedFrom: moved?.day ?? null });
  return noteId;
}

/** Takes the last word on a date back, with what it did to the log; `false` when none was said. */
export function takeBackWord(db: Database, plantId: string, event: OfferedEvent): boolean {
  const word = bloomWordsOf(db, plantId).find((one) => one.event === event);
  if (word === undefined) return false;
  const note = word.noteId === null ? null : noteById(db, word.noteId);
  if (note !== null && word.movedFrom !== null) {
    changeNote(db, note.id, { ...note, day: word.movedFrom });
    keepBloomWord(db, plantId, { ...word, day: word.movedFrom, movedFrom: null });
    return true;
  }
  if (note !== null) setNoteRemoved(db, note.id, true);
  dropBloomWord(db, plantId, event);
  return true;
}
