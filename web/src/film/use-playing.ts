import { useEffect, useState } from 'react';

/** A film that runs from picture to picture. */
export interface Playing {
  readonly index: number;
  readonly isPlaying: boolean;
  goTo(index: number): void;
  /** Steps back or on; the film then stands. */
  step(by: number): void;
  /** Shows the next picture while it plays; stands at the last. */
  runOn(): void;
  /** Plays on, from the beginning when it stood at the end; or stands still. */
  toggle(): void;
}

/** A film of `count` pictures. It begins by itself, unless the device asks for no motion. */
export function usePlaying(count: number): Playing {
  const [index, setIndex] = useState(0);
  const [isPlaying, setPlaying] = useState(
    () => count > 1 && !window.matchMedia('(prefers-reduced-motion: reduce)').matches,
  );
  const last = Math.max(count - 1, 0);
  const at = Math.min(index, last);
  const goTo = (to: number) => {
    setPlaying(false);
    setIndex(Math.min(Math.max(to, 0), last));
  };
  return {
    index: at,
    isPlaying,
    goTo,
    step: (by) => goTo(at + by),
    runOn() {
      setIndex(Math.min(at + 1, last));
      if (at + 1 >= last) setPlaying(false);
    },
    toggle() {
      if (!isPlaying && at === last) setIndex(0);
      setPlaying(!isPlaying && count > 1);
    },
  };
}

/** Lets a film run that plays: it waits for a picture that is not there yet rather than jump over it. */
export function useRunning({ index, isPlaying, runOn }: Playing, isReady: boolean, perSecond: number): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a picture has its time once
  useEffect(() => {
    if (!isPlaying || !isReady) return;
    const timer = window.setTimeout(runOn, 1000 / perSecond);
    return () => window.clearTimeout(timer);
  }, [index, isPlaying, isReady, perSecond]);
}

/** Space plays, arrows step, Home and End go to the ends, as long as no entry or button has the key. */
export function useFilmKeys({ step, goTo, toggle }: Playing, count: number): void {
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return;
      const target = event.target instanceof Element ? event.target : null;
      if (target?.closest('input, textarea, select, [role=radiogroup], [role=dialog]')) return;
      if (event.key === ' ' && !target?.closest('button, a, summary')) {
        event.preventDefault();
        toggle();
      }
      if (event.key === 'ArrowLeft') step(-1);
      if (event.key === 'ArrowRight') step(1);
      if (event.key === 'Home') goTo(0);
      if (event.key === 'End') goTo(count - 1);
      if (event.key === 'Home' || event.key === 'End') event.preventDefault();
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  });
}
