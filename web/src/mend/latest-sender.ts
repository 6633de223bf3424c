/** Sends one thing at a time; of what gathers while it waits only the latest goes out. */
export interface LatestSender<Thing> {
  push(thing: Thing): void;
  /** Once nothing is on its way: whether the latest thing pushed has been answered. */
  settled(): Promise<boolean>;
}

/**
 * Requests go out one after the other, so answers come in the order of the things they answer and an older
 * answer cannot land on a newer one. A failure is told only when nothing newer waits: the newer thing holds
 * the failed one, and goes out instead.
 */
export function createLatestSender<Thing, Answer>({
  send,
  onAnswer,
  onFault,
}: {
  send: (thing: Thing) => Promise<Answer>;
  /** `isNewest` is false while something newer waits to go out. */
  onAnswer: (answer: Answer, thing: Thing, isNewest: boolean) => void;
  onFault: (fault: unknown) => void;
}): LatestSender<Thing> {
  let waiting: { thing: Thing } | null = null;
  let failed = false;
  let sending: Promise<void> | null = null;

  async function sendAll(): Promise<void> {
    while (waiting) {
      const { thing }: { thing: Thing } = waiting;
      waiting = null;
      try {
        const answer = await send(thing);
        onAnswer(answer, thing, waiting === null);
      } catch (fault) {
        if (waiting !== null) continue;
        failed = true;
        onFault(fault);
      }
    }
    sending = null;
  }

  return {
    push(thing) {
      waiting = { thing };
      failed = false;
      sending ??= sendAll();
    },
    async settled() {
      while (sending) await sending;
      return !failed;
    },
  };
}
