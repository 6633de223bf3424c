import { type KeyboardEvent, useMemo, useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import { plantCrop } from '../photo/crop.ts';
import type { Box, Point } from '../photo/points.ts';
import { finishedStrokes } from './brush.ts';
import { type KeyWord, readKey } from './mend-keys.ts';
import { BRUSH_MEANINGS, BRUSH_WORDS, CUTTING, countStrokes, crossWords, NO_ZONE } from './mend-words.ts';
import type { StageSize } from './photo-window.ts';
import { cleared, redone, type StrokeHistory, undone, withStrokes } from './stroke-history.ts';
import { useBrush } from './use-brush.ts';
import { useCrosshair } from './use-crosshair.ts';
import { useMending } from './use-mending.ts';
import { usePainting } from './use-painting.ts';
import { usePhotoWindow } from './use-photo-window.ts';
import { useZoneSteps } from './use-zone-steps.ts';
import { contains, zoneStrokes } from './zone-dabs.ts';

export type MendDesk = ReturnType<typeof useMendDesk>;

/** Everything the mending tool holds in hand: brush, window, strokes, zones, and what was last said. */
export function useMendDesk({
  plantId,
  opened,
  stage,
  photo: photoPlace,
  onClose,
}: {
  plantId: string;
  opened: View;
  stage: StageSize;
  photo: HTMLElement | null;
  onClose: () => void;
}) {
  const photo: Box = useMemo(
    () => ({ x: 0, y: 0, width: opened.widthPx, height: opened.heightPx }),
    [opened.widthPx, opened.heightPx],
  );
  const [told, say] = useState(BRUSH_MEANINGS.keep);
  const [closing, setClosing] = useState(false);
  const { brush, widthStep, widthPx, chooseBrush, chooseWidth } = useBrush(
    Math.max(photo.width, photo.height),
    say,
  );

  const mending = useMending(plantId, opened, say);
  const { history, view } = mending;
  const window = usePhotoWindow(
    photo,
    useMemo(() => plantCrop(opened, stage.width / stage.height, 0.06), [opened, stage]),
    stage,
  );
  const zones = useZoneSteps(view, history.strokes, window);

  function change(next: StrokeHistory, words: string): void {
    if (next === history) return;
    say(words);
    mending.change(next);
  }

  function addStroke(pointsPx: readonly Point[]): void {
    if (brush === 'move') return;
    zones.stay();
    change(withStrokes(history, finishedStrokes(brush, widthPx, pointsPx)), CUTTING);
  }

  const painting = usePainting({
    photo,
    stage,
    window,
    painting: brush !== 'move',
    widthPx,
    onStroke: addStroke,
  });
  const keys = useCrosshair({
    photo,
    window,
    widthPx,
    live: painting.live,
    setLive: painting.setLive,
    onStroke: addStroke,
  });

  const undo = () => {
    const next = undone(history);
    change(next, `Undone: ${countStrokes(next.strokes.length)}. ${CUTTING}`);
  };
  const redo = () => {
    const next = redone(history);
    change(next, `Brought back: ${countStrokes(next.strokes.length)}. ${CUTTING}`);
  };
  const clear = () => change(cleared(history), `All strokes cleared. Undo brings them back. ${CUTTING}`);

  function answerZone(isLeaf: boolean): void {
    if (!zones.asked) {
      say(NO_ZONE);
      return;
    }
    zones.leave();
    const words = isLeaf ? 'Yes: the zone is put in.' : 'No: the zone is put out.';
    change(withStrokes(history, zoneStrokes(zones.asked.outlinePx, isLeaf)), `${words} ${CUTTING}`);
  }

  function nextZone(): void {
    if (zones.asked) zones.next();
    else say(NO_ZONE);
  }

  function press(): void {
    if (brush === 'move') say('Choose Keep (K) or Remove (R) first.');
    else if (keys.press()) say(`${BRUSH_WORDS[brush]} stroke begun. Space ends it.`);
  }

  function step(by: Point, far: boolean): void {
    const at = keys.step(by, far);
    say(crossWords(at, contains(view.outlinePx, at)));
  }

  const zoomAt = (factor: number) => window.zoom(factor, keys.cross ?? undefined);
  const acts: Record<KeyWord, () => void> = {
    press,
    undo,
    redo,
    keep: () => chooseBrush('keep'),
    remove: () => chooseBrush('remove'),
    wider: () => chooseWidth(widthStep + 1),
    narrower: () => chooseWidth(widthStep - 1),
    'next-zone': nextZone,
    'zone-in': () => answerZone(true),
    'zone-out': () => answerZone(false),
    closer: () => zoomAt(1.5),
    farther: () => zoomAt(1 / 1.5),
  };

  async function close(last: () => Promise<boolean>): Promise<void> {
    setClosing(true);
    const sent = await last();
    setClosing(false);
    if (sent) onClose();
  }
  const cancel = () => close(mending.takeBack);

  return {
    mending,
    zones,
    window,
    painting,
    brush,
    widthPx,
    widthStep,
    told,
    closing,
    cross: keys.cross,
    chooseBrush,
    chooseWidth,
    undo,
    redo,
    clear,
    answerZone,
    nextZone,
    cancel,
    finish: () => close(mending.finish),
    hearKey(event: KeyboardEvent): void {
      const act = readKey(event.nativeEvent, event.target === photoPlace);
      if (!act) return;
      event.preventDefault();
      if (act.what === 'step') step(act.by, act.far);
      else acts[act.what]();
    },
    /** Escape leaves a stroke, then the tool; with changed strokes it asks for Done or Cancel instead. */
    escape(): void {
      if (painting.live) painting.setLive(null);
      else if (history.strokes === opened.strokes) void cancel();
      else say('Done keeps the strokes, Cancel takes them back.');
    },
  };
}
