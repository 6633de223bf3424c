import styles from './LiveCamera.module.css';

/** How strongly the lay-over shows, and whether the stand's picture shows in it. */
export function LayOverTools({
  strength,
  onStrength,
  ghost,
  onGhost,
}: {
  strength: number;
  onStrength: (strength: number) => void;
  ghost: boolean;
  onGhost: (ghost: boolean) => void;
}) {
  return (
    <div className={styles.tools}>
      <label className={styles.strength}>
        <span>Lay-over</span>
        <input
          type="range"
          min="0"
          max="100"
          step="10"
          value={strength}
          aria-valuetext={`${strength} %`}
          onChange={(event) => onStrength(Number(event.target.value))}
        />
      </label>
      <button type="button" className={styles.ghost} aria-pressed={ghost} onClick={() => onGhost(!ghost)}>
        Earlier picture
      </button>
    </div>
  );
}
