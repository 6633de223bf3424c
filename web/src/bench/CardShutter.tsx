import type { Plant } from '../../../server/schemas/plant.ts';
import { PickFile } from '../parts/PickFile.tsx';
import { announce } from '../parts/undo.ts';
import styles from './CardShutter.module.css';

/** On a phone: the camera straight from the bench, one tap for it and one for the shutter. */
export function CardShutter({ plant }: { plant: Pick<Plant, 'id' | 'name'> }) {
  async function take(files: File[]) {
    if (files.length === 0) return;
    const { queuePhotos } = await import('../photos/send-queue.ts');
    queuePhotos(plant, files, null);
    announce(`The photo of ${plant.name} is taken in hand. How far it is stands above the bench.`);
  }
  return (
    <span className={styles.shutter}>
      <PickFile words={`Photograph ${plant.name}`} icon="camera" camera wordsHeard onPick={take} />
    </span>
  );
}
