import type { Plant } from '../../../server/schemas/plant.ts';
import { PickFile } from '../parts/PickFile.tsx';
import styles from './ThumbBar.module.css';

/** On a phone: the shutter at the thumb, wherever the page stands. The check of the photo opens right after. */
export function ThumbBar({ plant, onTaken }: { plant: Pick<Plant, 'id' | 'name'>; onTaken: () => void }) {
  async function take(files: File[]) {
    if (files.length === 0) return;
    const { queuePhotos } = await import('../photos/send-queue.ts');
    queuePhotos(plant, files, null);
    onTaken();
  }
  return (
    <div className={styles.bar} data-at-the-thumb>
      <PickFile words="Photograph" icon="camera" camera loud onPick={take} />
    </div>
  );
}
