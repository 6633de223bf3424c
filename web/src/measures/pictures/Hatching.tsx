import styles from './MeasurePicture.module.css';

/** Slanted lines that fill what a number counts against the plant. */
export function Hatching({ id, unitPx }: { id: string; unitPx: number }) {
  const step = 6 * unitPx;
  return (
    <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d={`M0 0V${step}`} className={styles.hatch} strokeWidth={2.2 * unitPx} />
    </pattern>
  );
}
