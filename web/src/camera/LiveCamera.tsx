import { Dialog } from '@base-ui/react/dialog';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { overlayQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { queuePhotos } from '../photos/send-queue.ts';
import { leavesOf } from '../plant/leafing.ts';
import { AfterShot } from './AfterShot.tsx';
import { LayOverDrawing } from './LayOverDrawing.tsx';
import { LayOverTools } from './LayOverTools.tsx';
import styles from './LiveCamera.module.css';
import { isTurned, type LayOver, layOverOfView } from './lay-over.ts';
import { shoot } from './shoot.ts';
import { useCamera } from './use-camera.ts';

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

function Viewfinder({ layOver, onShot }: { layOver: LayOver | null; onShot: (file: File) => void }) {
  const camera = useCamera(layOver && layOver.widthPx / layOver.heightPx);
  const video = useRef<HTMLVideoElement>(null);
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  const [strength, setStrength] = useState(60);
  const [ghost, setGhost] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const stream = camera.at === 'live' ? camera.stream : null;
  useEffect(() => {
    if (video.current) video.current.srcObject = stream;
  }, [stream]);

  const measure = () => {
    const shown = video.current;
    if (shown?.videoWidth) setSize({ width: shown.videoWidth, height: shown.videoHeight });
  };
  async function release() {
    if (!video.current) return;
    try {
      onShot(await shoot(video.current));
    } catch (broken) {
      setFault(broken instanceof Error ? broken.message : 'The picture could not be taken. Try once more.');
    }
  }

  return (
    <>
      <div className={styles.stage}>
        <div
          className={styles.picture}
          style={size ? { aspectRatio: `${size.width} / ${size.height}` } : undefined}
        >
          <video
            ref={video}
            className={styles.video}
            autoPlay
            playsInline
            muted
            onLoadedMetadata={measure}
            onResize={measure}
          />
          {size && layOver && (
            <LayOverDrawing layOver={layOver} video={size} strength={strength / 100} ghost={ghost} />
          )}
        </div>
      </div>
      <div className={styles.dock}>
        <p role="status" className={styles.told}>
          {camera.at === 'refused' ? camera.words : finderWords(layOver, size)}
        </p>
        {fault && <p role="alert">{fault}</p>}
        {layOver && camera.at === 'live' && (
          <LayOverTools strength={strength} onStrength={setStrength} ghost={ghost} onGhost={setGhost} />
        )}
        {camera.at === 'refused' ? (
          <PickFile
            words="Take an ordinary photo"
            icon="camera"
            camera
            loud
            onPick={([file]) => file && onShot(file)}
          />
        ) : (
          <button type="button" className={styles.shutter} disabled={!size} onClick={release}>
            <span className={styles.button} aria-hidden="true" />
            Take the photo
          </button>
        )}
      </div>
    </>
  );
}

/** Below this many px on the shorter side an ordinary photo shows more than the live picture. */
const FINE_ENOUGH_PX = 1000;

/** "ring marks, pot rim and outline". */
function listed(things: readonly string[]): string {
  const [last, ...before] = things.toReversed();
  return before.length === 0 ? `${last}` : `${before.toReversed().join(', ')} and ${last}`;
}

function finderWords(layOver: LayOver | null, size: { width: number; height: number } | null): string {
  if (!size) return 'Starting the camera…';
  if (layOver && isTurned(layOver, size))
    return 'Turn the phone: the photos before were taken the other way up.';
  const coarse =
    Math.min(size.width, size.height) < FINE_ENOUGH_PX
      ? ` This camera lends the page ${size.width} × ${size.height} px only; an ordinary photo is finer.`
      : '';
  if (!layOver) return `There is no earlier photo to lay over it. This one is the first.${coarse}`;
  const lines = [
    layOver.marksPx.length > 0 ? 'ring marks' : null,
    layOver.rim ? 'pot rim' : null,
    layOver.outlinePx.length > 0 ? 'outline' : null,
  ].filter((line) => line !== null);
  if (lines.length === 0) {
    return `This plant has no measured photo on its stand yet. Lay “Earlier picture” over: what stands still must meet.${coarse}`;
  }
  return `Move the camera until ${listed(lines)} lie on what you see. The plant has grown; pot and stand have not.${coarse}`;
}
