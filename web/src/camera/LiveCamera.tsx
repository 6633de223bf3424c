import { Dialog } from '@base-ui/react/dialog';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { overlayQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { queuePhotos } from '../photos/send-queue.ts';
import { leavesOf } from '../plant/leafing.ts';
import { AfterShot } from './AfterShot.tsx';
import styles from './LiveCamera.module.css';
import { type LayOver, layOverOfView } from './lay-over.ts';
import { Viewfinder } from './Viewfinder.tsx';

/** The live picture with last week's outline over it, the shutter, and the check right after the shot. */
export default function LiveCamera({ page, onClose }: { page: PlantPage; onClose: () => void }) {
  const { plant } = page;
  const overlay = useQuery({
    ...overlayQuery(plant.standId ?? '', plant.id),
    enabled: plant.standId !== null,
    retry: false,
  });
  const [newest] = leavesOf(page.sittings).filter(({ view }) => view.report?.status === 'measured');
  const layOver: LayOver | null =
    overlay.data ?? (newest ? layOverOfView(newest.view, newest.sitting.day as LayOver['outlineDay']) : null);
  const settled = plant.standId === null || !overlay.isPending;
  const [shot, setShot] = useState<File | null>(null);

  return (
    <Dialog.Root open onOpenChange={(open) => !open && onClose()}>
      <Dialog.Portal>
        <Dialog.Popup className={styles.tool}>
          <header className={styles.head}>
            <Dialog.Title className={styles.title}>{plant.name}, live</Dialog.Title>
            <Dialog.Close className={buttons.icon} aria-label="Close the camera">
              <Icon name="close" />
            </Dialog.Close>
          </header>
          {shot ? (
            <AfterShot page={page} file={shot} onAgain={() => setShot(null)} onDone={onClose} />
          ) : (
            settled && (
              <Viewfinder
                layOver={layOver}
                onShot={(file) => {
                  queuePhotos(plant.id, [file], null);
                  setShot(file);
                }}
              />
            )
          )}
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
