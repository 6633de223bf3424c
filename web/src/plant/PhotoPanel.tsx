import { useEffect, useRef, useState } from 'react';
import type { Plant } from '../../../server/schemas/plant.ts';
import { CutList } from '../photo/CutList.tsx';
import { plantCrop } from '../photo/crop.ts';
import { FrameWords } from '../photo/FrameWords.tsx';
import { LayerSwitches } from '../photo/LayerSwitches.tsx';
import { LAYERS, type Layer, layerChoices, layersShown } from '../photo/layers.ts';
import { Overlay } from '../photo/Overlay.tsx';
import { isDoubtful, type UnsureZone } from '../photo/outline-words.ts';
import { PARTS_SHOWN } from '../photo/PartLines.tsx';
import { Photo } from '../photo/Photo.tsx';
import { weakSideOf } from '../photo/weak-side.ts';
import { agoWords, dayWords, todayHere } from '../words/day-words.ts';
import { ByHand } from './ByHand.tsx';
import { Corrections } from './Corrections.tsx';
import { LeftOut } from './LeftOut.tsx';
import { type Leaf, turnWords } from './leafing.ts';
import styles from './PhotoPanel.module.css';
import { PhotoNotes, PhotoTrouble } from './PhotoTrouble.tsx';
import type { SheetName } from './PlantSheets.tsx';
import { Told } from './Told.tsx';
import { useSwipe } from './use-swipe.ts';

const NOTHING_TOLD = { words: '', zone: null };

/** The photo with its answer drawn on it. */
export function PhotoPanel({
  plant,
  leaf,
  newest,
  spokenOf,
  onStep,
  onOpen,
}: {
  plant: Plant;
  leaf: Leaf;
  newest: boolean;
  /** Layers that the advice speaks of. */
  spokenOf: readonly Layer[];
  onStep: (step: number) => void;
  onOpen: (sheet: SheetName) => void;
}) {
  const { view, sitting } = leaf;
  const layers = layersShown(layerChoices.useValue(), spokenOf);
  const [whole, setWhole] = useState(false);
  const [told, tell] = useState<{ words: string; zone: UnsureZone | null }>(NOTHING_TOLD);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was told belongs to the photo left behind
  useEffect(() => tell(NOTHING_TOLD), [view.id]);
  const frame = useRef<HTMLDivElement>(null);
  useSwipe(frame, onStep);

  const today = todayHere();
  const measured = view.report?.status === 'measured' ? view.report : null;
  const crop =
    whole || !measured ? { x: 0, y: 0, width: view.widthPx, height: view.heightPx } : plantCrop(view, 1);
  const drawn = LAYERS.filter((layer) => {
    if (layer === 'cuts') return (measured?.longStems.length ?? 0) > 0;
    if (layer === 'weak') return measured && weakSideOf(measured) !== null;
    if (layer === 'yellow') return (measured?.foliage?.where.length ?? 0) > 0;
    if (layer === 'thin') return measured?.gaps?.sectors.some(({ isThin }) => isThin);
    if (layer === 'unsure') return view.drawing.unsure.length > 0;
    if (layer === 'parts') return PARTS_SHOWN.some((part) => view.drawing.parts[part].length > 0);
    return layer !== 'axis' || measured?.axis;
  });

  return (
    <section aria-label="Photo" className={styles.panel}>
      <p>
        <b>{dayWords(sitting.day, today)}</b>, <span>{agoWords(sitting.day, today)}</span>
        {turnWords(view.turnDeg) && (
          <>
            , <span>{turnWords(view.turnDeg)}</span>
          </>
        )}
        {view.afterWork && <span className={styles.earlier}>after the work</span>}
        {!newest && <span className={styles.earlier}>an earlier photo</span>}
      </p>
      <PhotoTrouble plantId={plant.id} view={view} />
      <LeftOut sitting={sitting} />
      <div ref={frame} className={styles.frame}>
        <Photo view={view} crop={crop} detail={1600} label={`${plant.name}, ${dayWords(sitting.day, today)}`}>
          {(unitPx) =>
            measured && (
              <Overlay
                view={view}
                report={measured}
                layers={layers}
                crop={crop}
                unitPx={unitPx}
                onTell={(words) => tell({ words, zone: null })}
                onAsk={(zone) => tell({ words: '', zone })}
              />
            )
          }
        </Photo>
      </div>
      {view.report && <FrameWords report={view.report} />}
      {!isDoubtful(measured?.confidence ?? null) && <PhotoNotes view={view} />}
      {measured && <Told plantId={plant.id} view={view} {...told} onAnswered={() => tell(NOTHING_TOLD)} />}
      <ByHand plantId={plant.id} leaf={leaf} />
      {measured && (
        <>
          <LayerSwitches layers={drawn} shown={layers}>
            <button
              type="button"
              className={styles.whole}
              aria-pressed={whole}
              onClick={() => setWhole(!whole)}
            >
              Whole photo
            </button>
          </LayerSwitches>
          <CutList report={measured} />
        </>
      )}
      {/* What of it stands open is settled by how this photo was read. */}
      <Corrections key={`${view.id} ${view.report?.status}`} plantId={plant.id} leaf={leaf} onOpen={onOpen} />
    </section>
  );
}
