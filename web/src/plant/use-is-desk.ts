import { useSyncExternalStore } from 'react';

/** From here on photo and answers stand side by side, as in `PlantScreen.module.css`. */
const DESK = window.matchMedia('(min-width: 60rem)');

/** Whether there is room for two columns; follows the window. */
export function useIsDesk(): boolean {
  return useSyncExternalStore(
    (onChange) => {
      DESK.addEventListener('change', onChange);
      return () => DESK.removeEventListener('change', onChange);
    },
    () => DESK.matches,
  );
}
