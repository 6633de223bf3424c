import { useId } from 'react';
import type { PhotoReport } from '../../../core/report.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { BallLine } from './BallLine.tsx';
import { CutMarks } from './CutMarks.tsx';
import { placeCutLabels } from './cut-label-places.ts';
import { numberedStems } from './cut-marks.ts';
import type { Layer } from './layers.ts';
import styles from './Overlay.module.css';
import type { UnsureZone } from './outline-words.ts';
import { axisWords, ballWords, cutWords, excessWords, OUTLINE_WORDS, weakWords } from './overlay-words.ts';
import { PartLines } from './PartLines.tsx';
import type { Box } from './points.ts';
import { outlinePath } from './points.ts';
import { Tappable } from './Tappable.tsx';
import { ThinSectors, thinToName } from './ThinSectors.tsx';
import { thinRuns } from './thin-sectors.ts';
import { UnsureZones } from './UnsureZones.tsx';
import { WeakSideName, WeakSideShading, weakPlate } from './WeakSideShading.tsx';
import { weakSideOf } from './weak-side.ts';
import { YellowZones, yellowRoom, yellowToName } from './YellowZones.tsx';
import { placeZoneLabels } from './zone-labels.ts';

export interface OverlayProps {
  view: View;
  report: PhotoReport;
  layers: readonly Layer[];
  crop: Box;
  unitPx: number;
  /** Hears what a tapped thing is. */
  onTell: (words: string) => void;
  /** Hears which unsure zone was tapped. */
  onAsk: (zone: UnsureZone) => void;
}

/** The answer drawn on the photo: ball, outline, unsure zones, parts, axis and rim, weak side, thin places, yellow leaf, cut marks. */
export function Overlay({ view, report, layers, crop, unitPx, onTell, onAsk }: OverlayProps) {
  const id = useId();
  const { ball, axis } = report;
  const outline = outlinePath(view.outlinePx);
  const weak = weakSideOf(report);
  const shows = (layer: Layer) => layers.includes(layer);
  const cuts = numberedStems(report.longStems).map((one) => ({
    ...one,
    words: excessWords(one.stem),
    told: cutWords(one),
  }));
  // One after the other, so that no label lies over another: cut marks have their place, the rest makes way.
  const fixed = [
    ...(shows('cuts') && ball ? placeCutLabels(cuts, ball, crop, unitPx) : []),
    ...(shows('weak') && weak && ball ? [weakPlate(weak, crop, unitPx)] : []),
    ...(shows('yellow') ? yellowRoom(report) : []),
  ];
  const runs = shows('thin') && ball && report.gaps ? thinRuns(report.gaps) : [];
  const yellow = shows('yellow') ? yellowToName(report) : [];
  const thin = ball ? thinToName(runs, ball) : [];
  const plates = placeZoneLabels([...yellow, ...thin], fixed, crop, unitPx);
  return (
    <>
      {shows('weak') && weak && ball && (
        <Tappable words={weakWords(report, weak.side)} onTell={onTell}>
          <WeakSideShading id={id} weak={weak} ball={ball} outline={outline} unitPx={unitPx} />
        </Tappable>
      )}
      {shows('outline') && outline && (
        <Tappable words={OUTLINE_WORDS} onTell={onTell}>
          <path d={outline} className={styles.outlineCasing} />
          <path d={outline} className={styles.outline} />
          <path d={outline} className={styles.reach} />
        </Tappable>
      )}
      {shows('parts') && <PartLines parts={view.drawing.parts} onTell={onTell} />}
      {shows('axis') && axis && (
        <Tappable words={axisWords(report)} onTell={onTell}>
          {[styles.axisCasing, styles.axis, styles.reach].map((className) => (
            <g key={className} className={className}>
              <path d={`M${axis.xPx} ${crop.y}V${crop.y + crop.height}`} />
              <path d={`M${axis.rimLeftPx.join(' ')}L${axis.rimRightPx.join(' ')}`} />
            </g>
          ))}
        </Tappable>
      )}
      {shows('ball') && ball && (
        <Tappable words={ballWords(report)} onTell={onTell}>
          <BallLine id={id} ball={ball} axis={axis} crop={crop} />
        </Tappable>
      )}
      {/* Over the ball, whose reach for the finger would swallow the taps on zones along it. */}
      {shows('unsure') && <UnsureZones id={id} zones={view.drawing.unsure} unitPx={unitPx} onAsk={onAsk} />}
      {shows('weak') && weak && ball && <WeakSideName weak={weak} crop={crop} unitPx={unitPx} />}
      {runs.length > 0 && ball && (
        <ThinSectors
          id={id}
          runs={runs}
          ball={ball}
          plates={plates.slice(yellow.length)}
          crop={crop}
          unitPx={unitPx}
          onTell={onTell}
        />
      )}
      {yellow.length > 0 && (
        <YellowZones
          id={id}
          report={report}
          plates={plates.slice(0, yellow.length)}
          crop={crop}
          unitPx={unitPx}
          onTell={onTell}
        />
      )}
      {shows('cuts') && ball && (
        <CutMarks marks={cuts} ball={ball} crop={crop} unitPx={unitPx} onTell={onTell} />
      )}
    </>
  );
}
