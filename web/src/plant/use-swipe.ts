import { type RefObject, useEffect, useRef } from 'react';

/** A sideways stroke of at least this many CSS px, clearly flatter than it is tall, leafs on. */
const STROKE = 56;

/** Leafs by a finger's stroke: to the left goes to the older photo, as one pulls a strip along. */
export function useSwipe(place: RefObject<HTMLElement | null>, onStep: (step: number) => void): void {
  const step = useRef(onStep);
  step.current = onStep;
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    let start: { x: number; y: number } | null = null;
    const begin = (event: TouchEvent) => {
      const [finger] = event.touches;
      start = finger && event.touches.length === 1 ? { x: finger.clientX, y: finger.clientY } : null;
    };
    const end = (event: TouchEvent) => {
      const [finger] = event.changedTouches;
      if (!start || !finger) return;
      const [across, down] = [finger.clientX - start.x, finger.clientY - start.y];
      start = null;
      if (Math.abs(across) < STROKE || Math.abs(across) < 2 * Math.abs(down)) return;
      step.current(across < 0 ? 1 : -1);
    };
    element.addEventListener('touchstart', begin, { passive: true });
    element.addEventListener('touchend', end, { passive: true });
    return () => {
      element.removeEventListener('touchstart', begin);
      element.removeEventListener('touchend', end);
    };
  }, [place]);
}
