import { Dialog } from '@base-ui/react/dialog';
import { useEffect, useId, useRef, useState } from 'react';
import type { View } from '../../../../server/schemas/sitting.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import type { Point } from '../../photo/points.ts';
import { MendNumbers } from '../MendNumbers.tsx';
import tool from '../MendTool.module.css';
import { usePhotoWindow } from '../use-photo-window.ts';
import { useStageSize } from '../use-stage-size.ts';
import { RimStage } from './RimStage.tsx';
import { HANDLE_WORDS, handlePlace, type RimHandle, roomAroundRim, withHandleAt } from './rim-handles.ts';
import { useRim } from './use-rim.ts';

/** After the last key the photo is measured anew; a drag that ends is. */
const REST_MS = 300;

/** The whole screen for setting the pot's rim, and with it the plant's axis, on one photo. */
export default function RimTool({
  plantId,
  view: opened,
  onClose,
}: {
  plantId: string;
  view: View;
  onClose: () => void;
}) {
  const [place, setPlace] = useState<HTMLDivElement | null>(null);
  const keysId = useId();
  const stage = useStageSize(place);
  const desk = useRim(plantId, opened);
  const [told, tell] = useState('Drag the ends of the rim to where the pot is widest at its top.');
  const photo = { x: 0, y: 0, width: opened.widthPx, height: opened.heightPx };
  const [first] = useState(() => roomAroundRim(desk.rim));
  const window = usePhotoWindow(photo, first, stage ?? { width: 1, height: 1 });
  const moved = useRef(desk.rim);
  const timer = useRef(0);
  /** It was moved and not sent yet. */
  const isUnsent = useRef(false);
  useEffect(() => () => clearTimeout(timer.current), []);

  function move(handle: RimHandle, to: Point) {
    moved.current = withHandleAt(desk.rim, handle, to, photo);
    desk.move(moved.current);
    const [x, y] = handlePlace(moved.current, handle);
    tell(`${HANDLE_WORDS[handle]}: ${Math.round(x)} px across, ${Math.round(y)} px down.`);
  }
  function rest() {
    isUnsent.current = true;
    clearTimeout(timer.current);
    timer.current = globalThis.setTimeout(send, REST_MS) as unknown as number;
  }
  function send() {
    isUnsent.current = false;
    desk.send(moved.current);
  }
  async function finish() {
    clearTimeout(timer.current);
    // What was moved a moment ago still counts.
    if (isUnsent.current) send();
    if (await desk.finish()) onClose();
  }
  async function cancel() {
    clearTimeout(timer.current);
    if (await desk.takeBack()) onClose();
  }

  return (
    <Dialog.Root open onOpenChange={(open) => !open && void cancel()}>
      <Dialog.Portal>
        <Dialog.Popup className={tool.tool}>
          <header className={tool.head}>
            <Dialog.Title className={tool.title}>Set the rim and the axis</Dialog.Title>
            <MendNumbers view={desk.view} />
          </header>
          <div className={tool.stage} ref={setPlace}>
            {stage && (
              <RimStage
                view={desk.view}
                rim={desk.rim}
                window={window}
                stage={stage}
                keysId={keysId}
                onMove={move}
                onRest={rest}
              />
            )}
            <div className={tool.zoom}>
              <button type="button" aria-label="Look closer" onClick={() => window.zoom(1.5)}>
                <Icon name="add" />
              </button>
              <button type="button" aria-label="Look farther" onClick={() => window.zoom(1 / 1.5)}>
                <Icon name="less" />
              </button>
            </div>
          </div>
          <div className={tool.dock}>
            <p role="status" className={tool.told}>
              {desk.isSending ? `${told} Measuring anew…` : told}
            </p>
            {desk.fault !== null && <Fault fault={desk.fault} onAgain={send} />}
            <div>
              <button
                type="button"
                className={buttons.quiet}
                disabled={desk.view.rimByHand === null && !desk.isSending}
                onClick={() => {
                  clearTimeout(timer.current);
                  isUnsent.current = false;
                  tell('The rim is as it was found in the photo.');
                  desk.send(null);
                }}
              >
                <Icon name="undo" /> As it was found
              </button>
            </div>
            <div className={tool.ways}>
              <button type="button" className={buttons.quiet} onClick={cancel}>
                Cancel
              </button>
              <button type="button" className={buttons.button} onClick={finish}>
                Done
              </button>
            </div>
            <p id={keysId} className={tool.told}>
              Tab goes from end to end; arrow keys move the one chosen, with Shift ten times as far. The
              handle in the middle takes rim and axis along.
            </p>
          </div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
