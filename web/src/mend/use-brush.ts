import { useState } from 'react';
import { FIRST_WIDTH_STEP, heldStep, widthOfStep } from './brush.ts';
import { BRUSH_MEANINGS, type Brush } from './mend-words.ts';

/** The brush in the hand; each choice is said. */
export function useBrush(longerSidePx: number, say: (words: string) => void) {
  const [brush, setBrush] = useState<Brush>('keep');
  const [widthStep, setWidthStep] = useState(FIRST_WIDTH_STEP);
  return {
    brush,
    widthStep,
    widthPx: widthOfStep(widthStep, longerSidePx),
    chooseBrush(next: Brush): void {
      setBrush(next);
      say(BRUSH_MEANINGS[next]);
    },
    chooseWidth(step: number): void {
      setWidthStep(heldStep(step));
      say(`The brush is ${widthOfStep(step, longerSidePx).toFixed(0)} px of the photo wide.`);
    },
  };
}
