import { useId } from 'react';
import buttons from './buttons.module.css';
import { Icon, type IconName } from './Icon.tsx';

/** What the file dialog offers; the server decides what it can read. */
const PHOTO_FILES = 'image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif';

/** A button that opens the file dialog, or the camera on a phone. */
export function PickFile({
  words,
  icon,
  many = false,
  camera = false,
  loud = false,
  wordsHeard = false,
  onPick,
}: {
  words: string;
  icon: IconName;
  many?: boolean;
  camera?: boolean;
  loud?: boolean;
  /** The icon stands for the words, which are heard only. */
  wordsHeard?: boolean;
  onPick: (files: File[]) => void;
}) {
  const id = useId();
  return (
    <span className={buttons.pick}>
      <input
        id={id}
        type="file"
        aria-label={wordsHeard ? words : undefined}
        accept={PHOTO_FILES}
        multiple={many}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          onPick([...(event.target.files ?? [])]);
          // The same file may be picked again after a failure.
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={loud ? buttons.button : buttons.quiet}>
        <Icon name={icon} size={wordsHeard ? 28 : 22} /> {wordsHeard || words}
      </label>
    </span>
  );
}
