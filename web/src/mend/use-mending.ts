import { useEffect, useRef, useState } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { sendAccepted, sendStrokes, showView, warmUp } from '../api/mending.ts';
import { refresh } from '../api/queries.ts';
import { createLatestSender } from './latest-sender.ts';
import { type StrokeHistory, startHistory } from './stroke-history.ts';

/** The strokes on a photo and the server's newest answer to them. */
export interface Mending {
  readonly history: StrokeHistory;
  /** The photo as last answered. */
  readonly view: View;
  /** The strokes that the shown outline already follows. */
  readonly heard: readonly Stroke[];
  readonly busy: boolean;
  readonly fault: unknown;
  /** Takes the next state of the strokes and sends it. */
  change(next: StrokeHistory): void;
  sendAgain(): void;
  /** Keeps the strokes and calls the outline right, if there is one; false when it could not be sent. */
  finish(): Promise<boolean>;
  /** Brings the strokes back to what they were on opening; false when it could not be sent. */
  takeBack(): Promise<boolean>;
}

export function useMending(
  plantId: string,
  opened: View,
  onAnswer: (view: View, isNewest: boolean) => void,
): Mending {
  const [history, setHistory] = useState(() => startHistory(opened.strokes));
  const [answer, setAnswer] = useState({ view: opened, heard: opened.strokes as readonly Stroke[] });
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<unknown>(null);
  const newest = useRef(opened);
  const hearAnswer = useRef(onAnswer);
  hearAnswer.current = onAnswer;

  const [sender] = useState(() =>
    createLatestSender<readonly Stroke[], View>({
      send: (strokes) => sendStrokes(opened.id, strokes),
      onAnswer: (view, heard, isNewest) => {
        newest.current = view;
        setAnswer({ view, heard });
        setFault(null);
        showView(plantId, view);
        hearAnswer.current(view, isNewest);
      },
      onFault: setFault,
      onBusy: setBusy,
    }),
  );

  // A photo that cannot be made ready now is made ready by its first stroke, which says what is wrong.
  useEffect(() => void warmUp(opened.id).catch(() => undefined), [opened.id]);

  async function allSent(): Promise<boolean> {
    if (await sender.settled()) return true;
    sender.again();
    return sender.settled();
  }

  /** Runs the last request of the tool and reads the plant's page anew with what came of it. */
  async function close(last: () => Promise<View | null>): Promise<boolean> {
    setBusy(true);
    try {
      const view = await last();
      if (view) showView(plantId, view);
      void refresh(plantId);
      return true;
    } catch (refused) {
      setFault(refused);
      return false;
    } finally {
      setBusy(false);
    }
  }

  return {
    history,
    view: answer.view,
    heard: answer.heard,
    busy,
    fault,
    change(next) {
      if (next === history) return;
      setHistory(next);
      sender.push(next.strokes);
    },
    sendAgain: () => sender.again(),
    async finish() {
      if (!(await allSent())) return false;
      // Without an outline there is none to call right: the strokes alone stay.
      const hasOutline = newest.current.report?.status === 'measured';
      return close(async () => (hasOutline ? sendAccepted(opened.id, true) : null));
    },
    async takeBack() {
      if (history.strokes !== opened.strokes || answer.heard !== opened.strokes) {
        setHistory(startHistory(opened.strokes));
        sender.push(opened.strokes);
        if (!(await sender.settled())) return false;
      }
      return close(async () => (opened.acceptedOutline ? sendAccepted(opened.id, true) : null));
    },
  };
}
