import type { LightSpec } from '../light/lamps.ts';
import type { PlantSpec } from '../plant/plant-spec.ts';
import type { BackdropSpec } from '../stand/backdrop.ts';
import type { PotSpec } from '../stand/pot.ts';
import type { CameraSpec } from '../view/camera.ts';

/** Where one plant is photographed: the same place every week. */
export interface StandSpec {
  readonly camera: CameraSpec;
  readonly light: LightSpec;
  readonly backdrop: BackdropSpec;
  /** Stops by which the camera at this stand exposes more than usual. */
  readonly exposureStops: number;
  /** True for the busy place: other plants and panes behind the bench, and a photo of it with nothing on. */
  readonly busy: boolean;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The phone was held on its side: pixels are stored a quarter turn off and EXIF tells (Orientation 6). */
  readonly storedTurned: boolean;
}

/** One plant's season: what the grower would write down, and what the renderer needs to draw it. */
export interface PlantSeason {
  readonly key: string;
  readonly name: string;
  readonly kind: string;
  readonly variety: string;
  readonly showDay: string;
  readonly firstDay: string;
  readonly sittings: number;
  /** Turns photographed in a sitting, by week; other weeks only the mark's side is. */
  readonly turned: ReadonlyMap<number, readonly number[]>;
  readonly stops: readonly { readonly day: string; readonly depth: 'tip' | 'deep'; readonly note: string }[];
  /** `kind` as the log of the season names it; words alone have none. */
  readonly notes: readonly { readonly day: string; readonly text: string; readonly kind?: string }[];
  /** Turns of the pot: from that day on this azimuth faces the light. */
  readonly turns: readonly { readonly day: string; readonly facesLightDeg: number }[];
  readonly plant: PlantSpec;
  readonly pot: PotSpec;
  readonly stand: StandSpec;
}

/** A show of the season with the plants entered for it, by their keys. */
export interface SampleShow {
  readonly name: string;
  readonly day: string;
  readonly place: string;
  readonly rules: string;
  readonly classes: readonly {
    readonly name: string;
    readonly potMm: number | null;
    readonly widestMm: number | null;
    readonly tallestMm: number | null;
    readonly rules: string;
  }[];
  readonly entries: readonly { readonly plant: string; readonly class: string | null }[];
}
