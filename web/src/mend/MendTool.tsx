import { Dialog } from '@base-ui/react/dialog';
import { useId, useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { BrushTools } from './BrushTools.tsx';
import { BrushWidth } from './BrushWidth.tsx';
import { MendHelp } from './MendHelp.tsx';
import { MendNumbers } from './MendNumbers.tsx';
import { MendStage } from './MendStage.tsx';
import styles from './MendTool.module.css';
import { SendFault } from './SendFault.tsx';
import { StrokeTools } from './StrokeTools.tsx';
import { useMendDesk } from './use-mend-desk.ts';
import { useStageSize } from './use-stage-size.ts';
import { ZoneQuestion } from './ZoneQuestion.tsx';

const NOT_LAID_OUT = { width: 1, height: 1 };

/** The whole screen for mending one photo's outline with strokes. */
export default function MendTool({
  plantId,
  view,
  onClose,
}: {
  plantId: string;
  view: View;
  onClose: () => void;
}) {
  const [photo, setPhoto] = useState<HTMLDivElement | null>(null);
  const keysId = useId();
  const stage = useStageSize(photo);
  const desk = useMendDesk({
    plantId,
    opened: view,
    stage: stage ?? NOT_LAID_OUT,
    photo,
    onClose,
  });
  const { mending, zones } = desk;
  return (
    <Dialog.Root open onOpenChange={(open) => !open && desk.escape()}>
      <Dialog.Portal>
        <Dialog.Popup className={styles.tool} initialFocus={() => photo} onKeyDown={desk.hearKey}>
          <header className={styles.head}>
            <Dialog.Title className={styles.title}>Mend the outline</Dialog.Title>
            <MendNumbers view={mending.view} />
          </header>
          <div className={styles.stage}>
            <MendStage desk={desk} photo={photo} stage={stage} keysId={keysId} onPlace={setPhoto} />
            <div className={styles.zoom}>
              <button type="button" aria-label="Look closer" onClick={() => desk.window.zoom(1.5)}>
                <Icon name="add" />
              </button>
              <button type="button" aria-label="Look farther" onClick={() => desk.window.zoom(1 / 1.5)}>
                <Icon name="less" />
              </button>
            </div>
          </div>
          <div className={styles.dock}>
            <p role="status" className={styles.told}>
              {desk.told}
            </p>
            {mending.fault !== null && (
              <SendFault fault={mending.fault} onAgain={mending.sendAgain} onLeave={onClose} />
            )}
            {mending.fault === null && zones.asked && (
              <ZoneQuestion
                view={mending.view}
                zone={zones.asked}
                index={zones.index}
                count={zones.count}
                onAnswer={desk.answerZone}
                onNext={desk.nextZone}
              />
            )}
            <BrushTools brush={desk.brush} onBrush={desk.chooseBrush} />
            <div className={styles.tools}>
              <BrushWidth step={desk.widthStep} onStep={desk.chooseWidth} />
              <StrokeTools
                history={mending.history}
                onUndo={desk.undo}
                onRedo={desk.redo}
                onClear={desk.clear}
              />
            </div>
            <div className={styles.ways}>
              <button type="button" className={buttons.quiet} disabled={desk.closing} onClick={desk.cancel}>
                Cancel
              </button>
              <button type="button" className={buttons.button} disabled={desk.closing} onClick={desk.finish}>
                Done
              </button>
            </div>
            <MendHelp id={keysId} />
          </div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
