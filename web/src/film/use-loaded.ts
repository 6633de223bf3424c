import { useEffect, useRef, useState } from 'react';

export type PictureState = 'here' | 'broken';

/**
 * Fetches pictures by their addresses and tells which are there; each is asked for once. One that failed is told so, and the
 * film does not wait for it.
 */
export function useLoaded(addresses: readonly string[]): ReadonlyMap<string, PictureState> {
  const [states, setStates] = useState<ReadonlyMap<string, PictureState>>(new Map());
  const asked = useRef(new Map<string, HTMLImageElement>());
  useEffect(() => {
    for (const address of addresses) {
      if (asked.current.has(address)) continue;
      const picture = new Image();
      // Held on to, so that the browser keeps it while the film is open.
      asked.current.set(address, picture);
      const note = (state: PictureState) => setStates((before) => new Map(before).set(address, state));
      picture.src = address;
      picture.decode().then(
        () => note('here'),
        () => note('broken'),
      );
    }
  }, [addresses]);
  return states;
}
