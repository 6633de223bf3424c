import { Link } from 'wouter';
import type { Stand } from '../../../server/schemas/stand.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { EmptyPhotoCheck } from './EmptyPhotoCheck.tsx';
import styles from './StandScreen.module.css';

/** The stand's empty photo as it was found, and the way to a new one. */
export function StandEmptyPhoto({ stand }: { stand: Stand }) {
  return (
    <section aria-labelledby="empty-name" className={styles.part}>
      <h2 id="empty-name">The empty photo</h2>
      {stand.emptyPhoto ? (
        <EmptyPhotoCheck photo={stand.emptyPhoto} />
      ) : (
        <p>There is none yet. The first photo of a plant serves as the measure of the frame until then.</p>
      )}
      <div className={buttons.row}>
        <Link
          href={`/stands/${stand.id}/set-up?step=empty`}
          className={stand.emptyPhoto ? buttons.quiet : buttons.button}
        >
          <Icon name="camera" /> {stand.emptyPhoto ? 'Take it again' : 'Take the empty photo'}
        </Link>
        {stand.scaleFrom === 'sheet' && (
          <Link href={`/stand-sheet?paper=${stand.sheet?.paper ?? 'A4'}`} className={buttons.quiet}>
            <Icon name="sheet" /> The stand sheet
          </Link>
        )}
      </div>
    </section>
  );
}
