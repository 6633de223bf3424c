import { type DragEvent, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { cameraAccess, NO_ACCESS_WORDS } from '../camera/camera-access.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import Sheet from '../parts/Sheet.tsx';
import { daysOfViews } from '../plant/days-asked.ts';
import { usePageWith } from '../plant/use-page-with.ts';
import styles from './AddPhotosSheet.module.css';
import { HowToPhotograph } from './HowToPhotograph.tsx';
import { OtherDay } from './OtherDay.tsx';
import { SendingRow } from './SendingRow.tsx';
import { queuePhotos } from './send-queue.ts';
import { clearSettled, notKeeping, sendings, viewIdsOf } from './sending.ts';

/** Chooses photos by camera, files or dropping, and follows each until it is measured. */
export default function AddPhotosSheet({
  page: known,
  onClose,
  onShow,
  onLive,
}: {
  page: PlantPage;
  onClose: () => void;
  onShow: (viewId: string | null) => void;
  /** Opens the live picture. */
  onLive: () => void;
}) {
  const { plant } = known;
  const [day, setDay] = useState('');
  const [over, setOver] = useState(false);
  const access = cameraAccess();
  const mine = sendings.useValue().filter((one) => one.plantId === plant.id);
  const warning = notKeeping.useValue();
  const { page } = usePageWith(known, daysOfViews(known, viewIdsOf(mine)));
  const views = page.sittings.flatMap((sitting) => sitting.views);
  const add = (files: File[]) => queuePhotos(plant, files, day || null);

  function close() {
    if (mine.some(({ stage }) => stage.at === 'kept')) onShow(null);
    clearSettled(plant.id);
    onClose();
  }

  function drop(event: DragEvent) {
    event.preventDefault();
    setOver(false);
    add([...event.dataTransfer.files]);
  }

  return (
    <Sheet title={`Photos of ${plant.name}`} onClose={close}>
      <div className={styles.body}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra; the buttons inside do the same */}
        <div
          className={styles.drop}
          data-over={over || undefined}
          onDragOver={(event) => {
            event.preventDefault();
            setOver(true);
          }}
          onDragLeave={() => setOver(false)}
          onDrop={drop}
        >
          <div className={buttons.row}>
            <PickFile words="Take a photo" icon="camera" camera loud onPick={add} />
            <PickFile words="Choose photos" icon="file" many onPick={add} />
          </div>
          {access === 'open' ? (
            <button type="button" className={buttons.quiet} onClick={onLive}>
              <Icon name="overlay" />{' '}
              {views.some(({ report }) => report?.status === 'measured') ||
              page.earlier.some((sitting) => sitting.views.some(({ isMeasured }) => isMeasured))
                ? 'Live picture, the last outline over it'
                : 'Live picture'}
            </button>
          ) : (
            <p className={styles.hint}>{NO_ACCESS_WORDS[access]}</p>
          )}
          <p className={styles.hint}>
            <span className={styles.byMouse}>Or drop photos here.</span>{' '}
            <span>JPEG, PNG, WebP or HEIC, several at once.</span>
          </p>
        </div>
        {warning && <Fault fault={new Error(warning)} />}
        {mine.length > 0 && (
          <ul className={styles.list} aria-label="Photos on their way">
            {mine.map((sending) => (
              <SendingRow
                key={sending.key}
                sending={sending}
                view={
                  views.find(({ id }) => 'viewId' in sending.stage && id === sending.stage.viewId) ?? null
                }
              />
            ))}
          </ul>
        )}
        {mine.length > 0 && (
          <button type="button" className={buttons.button} onClick={close}>
            <Icon name="keep" /> Done
          </button>
        )}
        <OtherDay day={day} onChange={setDay} />
        <details className={styles.more} open={views.length === 0}>
          <summary>How to photograph</summary>
          <HowToPhotograph />
        </details>
      </div>
    </Sheet>
  );
}
