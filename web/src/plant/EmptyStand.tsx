import type { Plant } from '../../../server/schemas/plant.ts';
import { removeEmptyPhoto, setEmptyPhoto } from '../api/corrections.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './EmptyStand.module.css';

/** The photo of the stand without the plant: it helps to tell plant from background. */
export function EmptyStand({ plant }: { plant: Plant }) {
  const { busy, fault, send } = useSending();
  const take = ([file]: File[]) => {
    if (file) void send(() => setEmptyPhoto(plant.id, file));
  };
  return (
    <section className={forms.part}>
      <h3>The empty stand</h3>
      <p>
        One photo from the same place without the plant helps to tell leaf from background. All photos of this
        plant are then measured anew against it.
      </p>
      {plant.emptyPhotoUrl && (
        <img className={styles.picture} src={plant.emptyPhotoUrl} alt="The empty stand" />
      )}
      <div className={buttons.row}>
        <PickFile
          words={plant.emptyPhotoUrl ? 'Put another in its place' : 'Add the empty photo'}
          icon="file"
          onPick={take}
        />
        {plant.emptyPhotoUrl && (
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => send(() => removeEmptyPhoto(plant.id))}
          >
            <Icon name="remove" /> Remove it
          </button>
        )}
      </div>
      {busy && <p role="status">Sending…</p>}
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
