import type { Progress } from '../schemas/pages.ts';

type Listener = (step: Progress) => void;

/** Tells whoever listens that a view has moved on. */
export interface ProgressBoard {
  tell(step: Progress): void;
  /** Listens until the returned function is called. */
  listen(listener: Listener): () => void;
}

export function createProgressBoard(): ProgressBoard {
  const listeners = new Set<Listener>();
  return {
    tell(step) {
      for (const listener of listeners) listener(step);
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
