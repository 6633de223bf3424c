import { useId } from 'react';
import type { Ball } from '../../../core/report.ts';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { BallLine } from '../photo/BallLine.tsx';
import { CutMarks } from '../photo/CutMarks.tsx';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { outlinePath } from '../photo/points.ts';
import { Tappable } from '../photo/Tappable.tsx';
import styles from './CutDrawings.module.css';
import { cutTold, takeOffWords } from './cut-words.ts';
import { isPlanned, type ListedCut } from './listed-cut.ts';

/** Room round the plant for the labels of many cuts, share of its longer side. */
const LABEL_ROOM = 0.24;

const AFTER_WORDS =
  'The outline as it would be after the chosen cuts. Dotted: as it is. Darkened between them: what comes off.';

/** One photo with the ball to cut to, the cuts, and the outline as it would be after them. */
export function CutPhoto({
  view,
  list,
  cuts,
  held,
  label,
  printedPx,
  onTell,
}: {
  view: View;
  list: CutList;
  cuts: readonly ListedCut[];
  held: ListedCut | null;
  label: string;
  printedPx?: number;
  /** Hears what was tapped, and the number of a cut. */
  onTell: (words: string, number: number | null) => void;
}) {
  const id = useId();
  const { report } = view;
  const crop = plantCrop(view, 1, LABEL_ROOM);
  const ball = report?.ball ? ballToCutTo(report.ball, list) : null;
  const outline = outlinePath(view.outlinePx);
  const after = outlinePath(list.outlinesAfter.find(({ viewId }) => viewId === view.id)?.outlinePx ?? []);
  const marks = cuts.filter(isPlanned).flatMap((cut) => {
    const mark = cut.marks.find(({ viewId }) => viewId === view.id);
    if (!mark) return [];
    const { tipPx, cutPx } = mark;
    const done = cut.state === 'done';
    return [
      {
        number: cut.number,
        tipPx,
        cutPx,
        words: done ? '✓ done' : takeOffWords(cut),
        told: cutTold(cut),
        done,
        held: held?.id === cut.id,
      },
    ];
  });
  return (
    <Photo
      view={view}
      crop={crop}
      detail={1600}
      label={label}
      {...(printedPx === undefined ? {} : { printedPx })}
    >
      {(unitPx) => (
        <>
          <Tappable words={AFTER_WORDS} onTell={(words) => onTell(words, null)}>
            {after && <path d={`${outline}${after}`} className={styles.goes} fillRule="evenodd" />}
            <path d={after || outline} className={styles.casing} />
            {after && <path d={outline} className={styles.now} />}
            <path
              d={after || outline}
              className={styles.after}
              data-testid={after ? 'outline-after' : 'outline'}
            />
          </Tappable>
          {ball && (
            <Tappable
              words={`The ball to cut to. ${list.ball?.words ?? ''}`}
              onTell={(words) => onTell(words, null)}
            >
              <BallLine id={id} ball={ball} axis={report?.axis ?? null} crop={crop} />
            </Tappable>
          )}
          {report?.ball && (
            <CutMarks marks={marks} ball={report.ball} crop={crop} unitPx={unitPx} onTell={onTell} />
          )}
        </>
      )}
    </Photo>
  );
}

/** The ball to cut to as this photo shows it: about the present ball's middle. */
function ballToCutTo(present: Ball, { ball }: CutList): Ball {
  // Evened up, each photo shows its own ball; the sitting's differs from it by a mm or two.
  if (ball === null || ball.way === 'even-up' || present.radiusMm === null) return present;
  return { ...present, radiusPx: (present.radiusPx * ball.radiusMm) / present.radiusMm };
}
