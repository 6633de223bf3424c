import { type ReactNode, useId } from 'react';
import styles from './Field.module.css';

interface FieldProps {
  label: string;
  help?: ReactNode;
  /** What is wrong with the entry; stands beside it and is heard with it. */
  fault?: string | undefined;
  children: (wiring: {
    id: string;
    'aria-describedby'?: string;
    'aria-invalid'?: true;
    className: string;
  }) => ReactNode;
}

/** A form entry with its name, its help and its fault tied together for ear and eye. */
export function Field({ label, help, fault, children }: FieldProps) {
  const id = useId();
  const described = [help && `${id}-help`, fault && `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      {help && (
        <div id={`${id}-help`} className={styles.help}>
          {help}
        </div>
      )}
      {children({
        id,
        className: styles.entry as string,
        ...(described ? { 'aria-describedby': described } : {}),
        ...(fault ? { 'aria-invalid': true as const } : {}),
      })}
      {fault && (
        <p id={`${id}-fault`} className={styles.fault}>
          {fault}
        </p>
      )}
    </div>
  );
}
