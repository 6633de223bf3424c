import { type RefObject, useLayoutEffect, useState } from 'react';
import type { StageSize } from './photo-window.ts';

/** Size of the stage on the screen, kept current; `null` before it is laid out. */
export function useStageSize(place: RefObject<Element | null>): StageSize | null {
  const [size, setSize] = useState<StageSize | null>(null);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () => {
      const { width, height } = element.getBoundingClientRect();
      if (width > 0 && height > 0) setSize({ width, height });
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, [place]);
  return size;
}
