import { useEffect, useRef, useState } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { sendAccepted, sendStrokes, showView, warmUp } from '../api/mending.ts';
import { refresh } from '../api/queries.ts';
import { createLatestSender } from './latest-sender.ts';
import { answerWords, NOT_SENT } from './mend-words.ts';
import { type StrokeHistory, startHistory } from './stroke-history.ts';

/** The strokes on a photo and the server's newest answer to them. */
export interface Mending {
  readonly history: StrokeHistory;
  /** The photo as last answered. */
  readonly view: View;
  /** The strokes that the shown outline already follows. */
  readonly heard: readonly Stroke[];
  readonly fault: unknown;
  /** Takes the next state of the strokes and sends it. */
  change(next: StrokeHistory): void;
  /** Sends the strokes on the screen once more. */
  sendAgain(): void;
  /** Keeps the strokes and calls the outline right, if there is one; false when it could not be sent. */
  finish(): Promise<boolean>;
  /** Brings the strokes back to what they were on opening; false when it could not be sent. */
  takeBack(): Promise<boolean>;
}

export function useMending(plantId: string, opened: View, say: (words: string) => void): Mending {
  const [history, setHistory] = useState(() => startHistory(opened.strokes));
  const [answer, setAnswer] = useState({ view: opened, heard: opened.strokes as readonly Stroke[] });
  const [fault, setFault] = useState<unknown>(null);
  const newest = useRef(opened);
  const changed = useRef(false);

  const [sender] = useState(() =>
    createLatestSender<readonly Stroke[], View>({
      send: (strokes) => sendStrokes(opened.id, strokes),
      onAnswer: (view, heard, isNewest) => {
        newest.current = view;
        setAnswer({ view, heard });
        setFault(null);
        showView(plantId, view);
        if (isNewest) say(answerWords(view));
      },
      onFault: (refused) => {
        setFault(refused);
        say(NOT_SENT);
      },
    }),
  );

  // A photo that cannot be made ready now is made ready by its first stroke, which says what is wrong.
  useEffect(() => void warmUp(opened.id).catch(() => undefined), [opened.id]);

  async function allSent(): Promise<boolean> {
    if (await sender.settled()) return true;
    sender.push(history.strokes);
    return sender.settled();
  }

  /** Runs the last request of the tool and reads the plant's page anew with what came of it. */
  async function close(last: () => Promise<View | null>): Promise<boolean> {
    try {
      const view = await last();
      if (view) showView(plantId, view);
      setFault(null);
      void refresh(plantId);
      return true;
    } catch (refused) {
      setFault(refused);
      return false;
    }
  }

  return {
    history,
    view: answer.view,
    heard: answer.heard,
    fault,
    change(next) {
      if (next === history) return;
      changed.current = true;
      setHistory(next);
      sender.push(next.strokes);
    },
    sendAgain: () => sender.push(history.strokes),
    async finish() {
      if (!(await allSent())) return false;
      // Without an outline there is none to call right: the strokes alone stay.
      const hasOutline = newest.current.report?.status === 'measured';
      return close(async () => (hasOutline ? sendAccepted(opened.id, true) : null));
    },
    async takeBack() {
      await sender.settled();
      // Sent past the list on the screen: if it fails, the strokes stay there and can still be kept.
      return close(async () => {
        if (!changed.current) return null;
        const view = await sendStrokes(opened.id, opened.strokes);
        return opened.acceptedOutline ? sendAccepted(opened.id, true) : view;
      });
    },
  };
}
