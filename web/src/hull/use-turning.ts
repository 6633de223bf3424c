import { useEffect, useRef, useState } from 'react';
import { between, FIRST_LOOK, type Turning } from './turning.ts';

/** A look is gone to in this time, ms; at once where the device asks for no motion. */
const PACE_MS = 320;

/** How the solid is looked at: `set` follows a finger at once, `goTo` turns there before the eye. */
export function useTurning() {
  const [turning, set] = useState<Turning>(FIRST_LOOK);
  const frame = useRef(0);
  const stop = () => cancelAnimationFrame(frame.current);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  function goTo(aim: Turning) {
    stop();
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return set(aim);
    const [from, begin] = [turning, performance.now()];
    const step = (now: number) => {
      const share = Math.min((now - begin) / PACE_MS, 1);
      set(between(from, aim, share * (2 - share)));
      if (share < 1) frame.current = requestAnimationFrame(step);
    };
    frame.current = requestAnimationFrame(step);
  }

  return {
    turning,
    goTo,
    set(next: Turning) {
      stop();
      set(next);
    },
  };
}
