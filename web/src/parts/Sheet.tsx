import { Dialog } from '@base-ui/react/dialog';
import type { ReactNode } from 'react';
import buttons from './buttons.module.css';
import { Icon } from './Icon.tsx';
import styles from './Sheet.module.css';

/** A dialog: from the foot of the screen on a phone, in its middle on a desk. */
export default function Sheet({
  title,
  wide = false,
  onClose,
  children,
}: {
  title: string;
  wide?: boolean;
  onClose: () => void;
  children: ReactNode;
}) {
  return (
    <Dialog.Root open onOpenChange={(open) => !open && onClose()}>
      <Dialog.Portal>
        <Dialog.Backdrop className={styles.scrim} />
        <Dialog.Popup className={styles.sheet} data-wide={wide || undefined}>
          <header className={styles.head}>
            <Dialog.Title className={styles.title}>{title}</Dialog.Title>
            <Dialog.Close className={buttons.icon} aria-label="Close">
              <Icon name="close" />
            </Dialog.Close>
          </header>
          <div className={styles.body}>{children}</div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
