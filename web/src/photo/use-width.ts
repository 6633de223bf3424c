import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element on the screen in CSS px, kept current; 0 before it is laid out. */
export function useWidth(place: RefObject<Element | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    setWidth(element.getBoundingClientRect().width);
    const watch = new ResizeObserver(([entry]) => entry && setWidth(entry.contentRect.width));
    watch.observe(element);
    return () => watch.disconnect();
  }, [place]);
  return width;
}
