import { useEffect } from 'react';

/** While a screen is open it is printed on paper held this way, whatever size the printer holds. */
export function usePaper(way: 'landscape' | 'portrait', marginMm: number): void {
  useEffect(() => {
    const style = document.createElement('style');
    style.textContent = `@page { size: ${way}; margin: ${marginMm}mm; }`;
    document.head.append(style);
    return () => style.remove();
  }, [way, marginMm]);
}
