import { lazy, type ReactNode, Suspense, useState } from 'react';
import { finishWork } from '../../api/many.ts';
import { type Said, sayOfWork } from '../../api/work-words.ts';
import { useSending } from '../../parts/use-sending.ts';
import { todayHere } from '../../words/day-words.ts';
import { logLineOf } from './log-line-of.ts';
import type { NamedPiece } from './work-groups.ts';
import { saidInWords } from './work-words.ts';

const MoveOrSkipSheet = lazy(() => import('./MoveOrSkipSheet.tsx'));

const SAID_WORDS: Record<Said['said'], string> = { done: 'Done', moved: 'Moved', skipped: 'Skipped' };

/** Has work done with one tap, or moved and skipped by way of a sheet; `sheet` is to be shown. */
export function useSettling(pieces: readonly NamedPiece[], onSettled?: () => void) {
  const { busy, fault, send } = useSending();
  const [open, setOpen] = useState(false);

  async function settle(said: Said = { said: 'done', day: todayHere() }): Promise<void> {
    const words = saidInWords(SAID_WORDS[said.said], pieces);
    const isKept = await send(() =>
      said.said === 'done' ? finishWork(pieces, logLineOf, said.day, words) : sayOfWork(pieces, said, words),
    );
    if (!isKept) return;
    setOpen(false);
    onSettled?.();
  }

  const sheet: ReactNode = open && (
    <Suspense fallback={null}>
      <MoveOrSkipSheet
        pieces={pieces}
        busy={busy}
        fault={fault}
        onClose={() => setOpen(false)}
        onSay={settle}
      />
    </Suspense>
  );
  // What the sheet sends is refused on the sheet.
  return { busy, fault: open ? null : fault, settle, openSheet: () => setOpen(true), sheet };
}
