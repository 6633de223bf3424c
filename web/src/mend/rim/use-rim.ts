import { useRef, useState } from 'react';
import type { RimByHand } from '../../../../core/stand/rim-by-hand.ts';
import type { View } from '../../../../server/schemas/sitting.ts';
import { showView } from '../../api/mending.ts';
import { refresh } from '../../api/queries.ts';
import { offerRimUndo, sendRim } from '../../api/rim.ts';
import { createLatestSender } from '../latest-sender.ts';
import { rimOf } from './rim-handles.ts';

/** The rim on the screen and the server's newest answer to it. */
export interface RimDesk {
  readonly rim: RimByHand;
  /** The photo as last answered. */
  readonly view: View;
  readonly isSending: boolean;
  readonly fault: unknown;
  /** Moves the rim on the screen only. */
  move(rim: RimByHand): void;
  /** Has the photo measured with the rim as it was moved last; `null` takes back what was set. */
  send(rim: RimByHand | null): void;
  /** Closes with what was set; false when it could not be sent. */
  finish(): Promise<boolean>;
  /** Brings back the rim of the opening; false when that could not be sent. */
  takeBack(): Promise<boolean>;
}

export function useRim(plantId: string, opened: View): RimDesk {
  const [rim, setRim] = useState(() => rimOf(opened));
  const [view, setView] = useState(opened);
  const [isSending, setSending] = useState(false);
  const [fault, setFault] = useState<unknown>(null);
  const sent = useRef<RimByHand | null>(opened.rimByHand);
  const [sender] = useState(() =>
    createLatestSender<RimByHand | null, View>({
      send: (next) => sendRim(opened.id, next),
      onAnswer: (answer, next, isNewest) => {
        setView(answer);
        setFault(null);
        showView(plantId, answer);
        if (!isNewest) return;
        setSending(false);
        if (next === null) setRim(rimOf(answer));
      },
      onFault: (refused) => {
        setSending(false);
        setFault(refused);
      },
    }),
  );
  const send = (next: RimByHand | null) => {
    sent.current = next;
    setSending(true);
    sender.push(next);
  };
  return {
    rim,
    view,
    isSending,
    fault,
    move: setRim,
    send,
    async finish() {
      if (!(await sender.settled())) {
        send(sent.current);
        if (!(await sender.settled())) return false;
      }
      if (sent.current !== opened.rimByHand) {
        offerRimUndo(
          plantId,
          opened,
          sent.current === null ? 'The rim is as it was found.' : 'The rim is set by hand.',
        );
      }
      void refresh(plantId);
      return true;
    },
    async takeBack() {
      await sender.settled();
      if (sent.current === opened.rimByHand) return true;
      send(opened.rimByHand);
      const isBack = await sender.settled();
      if (isBack) void refresh(plantId);
      return isBack;
    },
  };
}
