import { useEffect } from 'react';

/** While a screen is open it is printed by this page rule, whatever size the printer holds: `size: landscape; margin: 8mm`. */
export function usePaper(rule: string): void {
  useEffect(() => {
    const style = document.createElement('style');
    style.textContent = `@page { ${rule}; }`;
    document.head.append(style);
    return () => style.remove();
  }, [rule]);
}
