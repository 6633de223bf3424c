import { beforeEach, describe, expect, it } from 'vitest';
import { offerUndo, takeBack, type UndoOffer, undoOffer } from '../../web/src/parts/undo.ts';

/** An undo that the test ends, well or not. */
function slowUndo() {
  let end!: () => void;
  let refuse!: (fault: Error) => void;
  const undo = () =>
    new Promise<void>((resolve, reject) => {
      end = resolve;
      refuse = reject;
    });
  return { undo, end: () => end(), refuse: (fault: Error) => refuse(fault) };
}

const offered = () => undoOffer.read() as UndoOffer;

describe('what can be taken back', () => {
  beforeEach(() => undoOffer.write(null));

  it('is said to be taken back, and is then offered no more', async () => {
    const slow = slowUndo();
    offerUndo('The turn is removed.', slow.undo);
    const taking = takeBack(offered());
    slow.end();
    await taking;
    expect(undoOffer.read()).toEqual({ words: 'Taken back.', undo: null });
  });

  it('is offered again with the reason when it could not be', async () => {
    const slow = slowUndo();
    offerUndo('The turn is removed.', slow.undo);
    const taking = takeBack(offered());
    slow.refuse(new Error('The store is busy.'));
    await taking;
    expect(undoOffer.read()).toEqual({ words: 'Not taken back. The store is busy.', undo: slow.undo });
  });

  it.each(['well', 'badly'])('keeps what was offered meanwhile when the older ends %s', async (how) => {
    const slow = slowUndo();
    offerUndo('The turn is removed.', slow.undo);
    const taking = takeBack(offered());
    const newer = async () => {};
    offerUndo('Cut 2 is done.', newer);
    if (how === 'well') slow.end();
    else slow.refuse(new Error('The store is busy.'));
    await taking;
    expect(undoOffer.read()).toEqual({ words: 'Cut 2 is done.', undo: newer });
  });
});
