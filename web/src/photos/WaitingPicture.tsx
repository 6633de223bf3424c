import { useEffect, useState } from 'react';
import { heldFile } from './held-photos.ts';
import type { Sending } from './sending.ts';
import styles from './UnsentStrip.module.css';

/** A photo that waits, small. A kind that this browser cannot show (HEIC, mostly) is told by its name. */
export function WaitingPicture({ sending }: { sending: Sending }) {
  const { key, fileName } = sending;
  const [url, setUrl] = useState<string | null>(null);
  const isThere = sending.stage.at !== 'keeping';
  // biome-ignore lint/correctness/useExhaustiveDependencies: the bytes of a key never change
  useEffect(() => {
    if (!isThere) return;
    let made: string | null = null;
    let gone = false;
    void heldFile(sending)
      .catch(() => null)
      .then((file) => {
        if (file === null || gone) return;
        made = URL.createObjectURL(file);
        setUrl(made);
      });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [key, isThere]);
  if (url === null) {
    return (
      <span className={styles.noPicture} translate="no">
        {fileName}
      </span>
    );
  }
  return <img className={styles.picture} src={url} alt={fileName} onError={() => setUrl(null)} />;
}
