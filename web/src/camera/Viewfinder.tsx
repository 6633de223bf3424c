import { useEffect, useRef, useState } from 'react';
import { PickFile } from '../parts/PickFile.tsx';
import { finderWords } from './finder-words.ts';
import { LayOverDrawing } from './LayOverDrawing.tsx';
import { LayOverTools } from './LayOverTools.tsx';
import styles from './LiveCamera.module.css';
import type { LayOver } from './lay-over.ts';
import { shoot } from './shoot.ts';
import { useCamera } from './use-camera.ts';

/** The live picture with the lay-over on it, what to do in words, and the shutter; an ordinary photo where there is no camera. */
export function Viewfinder({ layOver, onShot }: { layOver: LayOver | null; onShot: (file: File) => void }) {
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
