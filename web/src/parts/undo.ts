import { createStore } from './store.ts';

/** The last thing that can be taken back, or the news of a failed undo. One at a time; no clock hurries it. */
export interface UndoOffer {
  readonly words: string;
  readonly undo: (() => Promise<void>) | null;
}

export const undoOffer = createStore<UndoOffer | null>(null);

export function offerUndo(words: string, undo: () => Promise<void>): void {
  undoOffer.write({ words, undo });
}

export function announce(words: string): void {
  undoOffer.write({ words, undo: null });
}

/** Takes back what is offered, and says how that went unless something newer stands there by then. */
export async function takeBack(offer: UndoOffer): Promise<void> {
  const say = (next: UndoOffer) => {
    if (undoOffer.read() === offer) undoOffer.write(next);
  };
  try {
    await offer.undo?.();
    say({ words: 'Taken back.', undo: null });
  } catch (fault) {
    say({ ...offer, words: `Not taken back. ${fault instanceof Error ? fault.message : ''}` });
  }
}
