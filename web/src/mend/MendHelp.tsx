import styles from './MendTools.module.css';

const KEYS = [
  ['Arrows', 'move the crosshair; with Shift in bigger steps'],
  ['Space or Enter', 'begins a stroke, and ends it'],
  ['K, R', 'keep, remove'],
  ['+ −', 'wider, narrower brush'],
  ['N', 'next unsure zone'],
  ['I, O', 'put the zone in (it is leaf), out (it is not)'],
  ['Z, X', 'look closer, farther'],
  ['Ctrl+Z, Ctrl+Y', 'undo, redo'],
] as const;

/** How to paint, and the keys. */
export function MendHelp({ id }: { id: string }) {
  return (
    <details className={styles.help}>
      <summary>How to mend, and the keys</summary>
      <div id={id}>
        <p>
          Paint over what is wrong. What lies under a stroke is settled, and what looks alike close by follows
          it up to the next edge, so a short stroke often does. Two fingers move and enlarge the photo.
          Hatched zones may be leaf or not; answering for them is the quickest mend.
        </p>
        <dl className={styles.keys}>
          {KEYS.map(([key, words]) => (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </div>
    </details>
  );
}
