import type { View } from '../../../server/schemas/sitting.ts';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import strip from '../plant/FilmStrip.module.css';
import { degreeWords } from '../words/turn-words.ts';

/** The views of the sitting, numbered as the words number them. */
export function ViewStrip({
  views,
  shownId,
  onShow,
}: {
  views: readonly View[];
  /** The view that is shown large beside the strip, where one is. */
  shownId?: string;
  onShow: (viewId: string) => void;
}) {
  return (
    <ol className={strip.strip} aria-label="The views of this sitting">
      {views.map((view, index) => (
        <li key={view.id}>
          <button
            type="button"
            className={strip.tile}
            aria-current={view.id === shownId || undefined}
            onClick={() => onShow(view.id)}
          >
            <Photo view={view} crop={plantCrop(view, 1)} label="" detail={320} />
            <span>
              {index + 1}
              {view.turnDeg !== null && `: ${degreeWords(view.turnDeg)}`}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}
