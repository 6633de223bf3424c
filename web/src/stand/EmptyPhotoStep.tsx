import type { Stand } from '../../../server/schemas/stand.ts';
import { removeStandEmptyPhoto, setStandEmptyPhoto } from '../api/stands.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { useSending } from '../parts/use-sending.ts';
import { EmptyPhotoCheck } from './EmptyPhotoCheck.tsx';
import steps from './StandSteps.module.css';

/** The photo of the stand without a plant, and at once what was seen on it. */
export function EmptyPhotoStep({ stand, onDone }: { stand: Stand; onDone: () => void }) {
  const { busy, fault, send } = useSending();
  const { emptyPhoto } = stand;
  const take = ([file]: File[]) => {
    if (file) void send(async () => void (await setStandEmptyPhoto(stand.id, file)));
  };
  return (
    <div className={steps.form}>
      <p>
        Take the plant away and photograph the stand as it is: camera on its mark, zoom as for the plant
        {stand.sheet ? ', the sheet in its place' : ''}. Every later photo is brought in line with this one,
        and it helps to tell leaf from background. It can be taken again at any time.
      </p>
      {emptyPhoto && <EmptyPhotoCheck photo={emptyPhoto} />}
      {busy && <p role="status">Sending and looking at it…</p>}
      {fault !== null && <Fault fault={fault} />}
      <div className={buttons.row}>
        <PickFile
          words={emptyPhoto ? 'Take it again' : 'Take the empty photo'}
          icon="camera"
          camera
          loud={!emptyPhoto?.check.good}
          onPick={take}
        />
        <PickFile words="Choose a photo" icon="file" onPick={take} />
        {emptyPhoto && (
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => send(() => removeStandEmptyPhoto(stand.id))}
          >
            <Icon name="remove" /> Do without it
          </button>
        )}
      </div>
      <div className={steps.foot}>
        <button
          type="button"
          className={emptyPhoto?.check.good ? buttons.button : buttons.quiet}
          disabled={busy}
          onClick={onDone}
        >
          {emptyPhoto ? 'Done' : 'Later'}
        </button>
        {!emptyPhoto && (
          <p>Without it the first photo of a plant on this stand serves as the measure of the frame.</p>
        )}
      </div>
    </div>
  );
}
