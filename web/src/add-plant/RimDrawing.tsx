import styles from './AddPlantScreen.module.css';

/** A pot with the rim measured across its outside. */
export function RimDrawing() {
  return (
    <svg
      viewBox="0 0 240 150"
      className={styles.drawing}
      role="img"
      aria-label="Measure across the outside of the rim, edge to edge."
    >
      <path d="M62 62l14 80h88l14-80" />
      <path d="M54 40h132v22H54z" />
      <g className={styles.measure}>
        <path d="M54 18h132M54 8v24M186 8v24M62 13l-8 5 8 5M178 13l8 5-8 5" />
      </g>
    </svg>
  );
}
