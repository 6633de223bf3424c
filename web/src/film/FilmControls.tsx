import buttons from '../parts/buttons.module.css';
import { Choices } from '../parts/Choices.tsx';
import { Icon } from '../parts/Icon.tsx';
import styles from './FilmControls.module.css';
import { FILM_LINES, type FilmLine } from './FilmStage.tsx';
import { SPEED_WORDS, SPEEDS, type Speed } from './film-words.ts';
import type { Playing } from './use-playing.ts';

const LINE_WORDS: Readonly<Record<FilmLine, string>> = { ball: 'Ball', outline: 'Outline' };

/** Play, step, pace, and what is drawn on the pictures. */
export function FilmControls({
  playing,
  count,
  speed,
  onSpeed,
  lines,
  onLines,
}: {
  playing: Playing;
  count: number;
  speed: Speed;
  onSpeed: (speed: Speed) => void;
  lines: readonly FilmLine[];
  onLines: (lines: readonly FilmLine[]) => void;
}) {
  const { index, isPlaying, step, toggle } = playing;
  return (
    <div className={styles.controls}>
      <div className={styles.run}>
        <button
          type="button"
          className={buttons.quiet}
          disabled={index === 0}
          onClick={() => step(-1)}
          aria-label="One picture back"
        >
          <Icon name="back" />
        </button>
        <button type="button" className={`${buttons.button} ${styles.play}`} onClick={toggle}>
          <Icon name={isPlaying ? 'pause' : 'play'} /> {isPlaying ? 'Stand still' : 'Play'}
        </button>
        <button
          type="button"
          className={buttons.quiet}
          disabled={index >= count - 1}
          onClick={() => step(1)}
          aria-label="One picture on"
        >
          <Icon name="onward" />
        </button>
      </div>
      <Choices
        legend="Pace"
        legendHidden
        options={(Object.keys(SPEEDS) as Speed[]).map((value) => ({ value, words: SPEED_WORDS[value] }))}
        chosen={speed}
        onChoose={onSpeed}
      />
      <fieldset className={styles.lines}>
        <legend className="only-heard">Drawn on the pictures</legend>
        {FILM_LINES.map((line) => (
          <label key={line}>
            <input
              type="checkbox"
              checked={lines.includes(line)}
              onChange={() =>
                onLines(lines.includes(line) ? lines.filter((one) => one !== line) : [...lines, line])
              }
            />
            {LINE_WORDS[line]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
