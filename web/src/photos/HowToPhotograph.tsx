import styles from './HowToPhotograph.module.css';

/** How to take a photo that can be measured, with the stand drawn from the side. */
export function HowToPhotograph() {
  return (
    <div className={styles.how}>
      <svg
        viewBox="0 0 320 150"
        className={styles.drawing}
        role="img"
        aria-label="The stand from the side: the camera a few steps back, as high as the pot rim; behind the plant a plain cloth."
      >
        <path d="M262 12v112" className={styles.cloth} />
        <path d="M178 124h90" className={styles.table} />
        <path d="M204 92h36l-5 32h-26z" className={styles.table} />
        <circle cx="222" cy="58" r="34" className={styles.ball} />
        <path d="M58 92h146" className={styles.sight} />
        <path
          d="M30 82h24v20H30zM54 88l6-3v14l-6-3M42 102v40M42 118l-12 24M42 118l12 24"
          className={styles.table}
        />
        <circle cx="206" cy="95" r="4.5" className={styles.mark} />
        <g className={styles.words}>
          <text x="66" y="84">
            rim height
          </text>
          <text x="258" y="142" textAnchor="end">
            plant and pot
          </text>
          <text x="269" y="26">
            cloth
          </text>
        </g>
      </svg>
      <ol className={styles.steps}>
        <li>Always from the same place: put marks down for camera and pot.</li>
        <li>Camera as high as the pot rim, a few steps back, held level.</li>
        <li>A plain cloth behind, no second plant in sight.</li>
        <li>The whole plant and the whole pot in the picture, with room around them.</li>
        <li>Turn the mark on the rim to the camera.</li>
        <li>Even light, no flash, the plant not against the sun.</li>
      </ol>
    </div>
  );
}
