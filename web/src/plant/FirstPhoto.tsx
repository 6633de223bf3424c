import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { HowToPhotograph } from '../photos/HowToPhotograph.tsx';
import styles from './FirstPhoto.module.css';
import type { SheetName } from './PlantSheets.tsx';

/** A plant without photos: how to take the first one, and where to add it. */
export function FirstPhoto({ onOpen }: { onOpen: (sheet: SheetName) => void }) {
  return (
    <section className={styles.first}>
      <h2>Take the first photo</h2>
      <HowToPhotograph />
      <button type="button" className={buttons.button} onClick={() => onOpen({ name: 'photos' })}>
        <Icon name="camera" /> Add the first photo
      </button>
    </section>
  );
}
