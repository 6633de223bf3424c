import { useLayoutEffect, useState } from 'react';
import type { StageSize } from './photo-window.ts';

/** Size of the stage on the screen, kept current; `null` before it is laid out. Takes the element as it comes: a dialog mounts it late. */
export function useStageSize(element: Element | null): StageSize | null {
  const [size, setSize] = useState<StageSize | null>(null);
  useLayoutEffect(() => {
    if (!element) return;
    const measure = () => {
      const { width, height } = element.getBoundingClientRect();
      if (width > 0 && height > 0) setSize({ width, height });
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, [element]);
  return size;
}
