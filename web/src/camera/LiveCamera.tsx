import { useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { queuePhotos } from '../photos/send-queue.ts';
import { AfterShot } from './AfterShot.tsx';
import { CameraFrame } from './CameraFrame.tsx';
import { useLayOver } from './use-lay-over.ts';
import { Viewfinder } from './Viewfinder.tsx';

/** The live picture with last week's outline over it, the shutter, and the check right after the shot. */
export default function LiveCamera({ page, onClose }: { page: PlantPage; onClose: () => void }) {
  const { plant } = page;
  const { layOver, settled } = useLayOver(page);
  const [shot, setShot] = useState<{ file: File; key: string } | null>(null);
  return (
    <CameraFrame title={`${plant.name}, live`} onClose={onClose}>
      {shot ? (
        <AfterShot
          page={page}
          file={shot.file}
          sendingKey={shot.key}
          onAgain={() => setShot(null)}
          onDone={onClose}
        />
      ) : (
        settled && (
          <Viewfinder
            layOver={layOver}
            onShot={(file) => {
              const [key] = queuePhotos(plant, [file], null);
              if (key) setShot({ file, key });
            }}
          />
        )
      )}
    </CameraFrame>
  );
}
