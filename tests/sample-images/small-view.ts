import type { ViewOptions } from '../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../sample-images/render/season/plants.ts';
import type { PlantSeason } from '../../sample-images/render/season/season-spec.ts';
import { sittingView } from '../../sample-images/render/season/sitting-view.ts';

export function seasonOf(key: string): PlantSeason {
  const season = PLANT_SEASONS.find((one) => one.key === key);
  if (!season) throw new RangeError(`Expected a sample plant's key but received ${JSON.stringify(key)}`);
  return season;
}

/** A sample plant's view at a fifth of the photo's size, quick enough for tests. */
export function smallView(
  key: string,
  week: number,
  turnDeg: number,
  changes: Partial<ViewOptions> = {},
): ViewOptions {
  return {
    ...sittingView(seasonOf(key), week, turnDeg, { size: 0.2, samplesPerSide: 3 }, null),
    ...changes,
  };
}
