import { describe, expect, it } from 'vitest';
import { createLatestSender } from '../../../web/src/mend/latest-sender.ts';

/** A sender whose requests are answered by hand, in any order the test likes. */
function handAnswered() {
  const sent: { thing: string; answer: (words: string) => void; refuse: (why: string) => void }[] = [];
  const heard: string[] = [];
  const sender = createLatestSender<string, string>({
    send: (thing) =>
      new Promise((answer, reject) => {
        sent.push({ thing, answer, refuse: (why) => reject(new Error(why)) });
      }),
    onAnswer: (answer, thing, isNewest) => heard.push(`${thing} → ${answer}${isNewest ? '' : ' (older)'}`),
    onFault: (fault) => heard.push(`fault: ${(fault as Error).message}`),
  });
  const at = (index: number) => {
    const one = sent[index];
    if (!one) throw new TypeError(`Expected request ${index} to have gone out but ${sent.length} have`);
    return one;
  };
  return { sender, sent, heard, at, turn: () => new Promise((resolve) => setTimeout(resolve)) };
}

describe('sending strokes', () => {
  it('has one request on its way at a time, so no older answer lands on a newer one', async () => {
    const { sender, sent, heard, at, turn } = handAnswered();
    sender.push('one');
    sender.push('two');
    expect(sent.map(({ thing }) => thing)).toEqual(['one']);
    at(0).answer('A');
    await turn();
    expect(sent.map(({ thing }) => thing)).toEqual(['one', 'two']);
    at(1).answer('B');
    await turn();
    expect(heard).toEqual(['one → A (older)', 'two → B']);
  });

  it('lets the latest win: lists that were overtaken while waiting never go out', async () => {
    const { sender, sent, at, turn } = handAnswered();
    for (const thing of ['one', 'two', 'three', 'four']) sender.push(thing);
    at(0).answer('A');
    await turn();
    at(1).answer('D');
    await turn();
    expect(sent.map(({ thing }) => thing)).toEqual(['one', 'four']);
  });

  it('tells a failure, and that it is made good once sent again', async () => {
    const { sender, sent, heard, at, turn } = handAnswered();
    sender.push('one');
    at(0).refuse('server away');
    await turn();
    expect(heard).toContain('fault: server away');
    expect(await sender.settled()).toBe(false);
    sender.push('one');
    at(1).answer('A');
    expect(await sender.settled()).toBe(true);
    expect(sent.map(({ thing }) => thing)).toEqual(['one', 'one']);
  });

  it('does not trouble the grower with a failure that a newer list makes good', async () => {
    const { sender, heard, at, turn } = handAnswered();
    sender.push('one');
    sender.push('two');
    at(0).refuse('server away');
    await turn();
    at(1).answer('B');
    expect(await sender.settled()).toBe(true);
    expect(heard).toEqual(['two → B']);
  });

  it('is settled when nothing was sent', async () => {
    expect(await handAnswered().sender.settled()).toBe(true);
  });
});
