import { cutHull, type HullGrid } from './hull-grid.ts';
import { hullBias, hullVolume, wadellSphericity } from './hull-size.ts';
import { hullSurface, type Surface, surfaceArea } from './hull-surface.ts';
import { planOutline } from './plan-outline.ts';
import { ballsOfViews } from './sphere-of-views.ts';
import type { TurnedScene } from './turned-scene.ts';
import type { PlantPoint } from './turned-view.ts';

/** What the hull of a sitting says. Mm and ml are `null` without a scale. */
export interface HullReport {
  /** Of the hull itself: never less than the plant's. */
  readonly volumeMl: number | null;
  /** How many times too large a round plant comes out with these views. */
  readonly bias: number;
  /** Volume ÷ bias: the better guess for a bushy plant. */
  readonly correctedVolumeMl: number | null;
  /** Of the hull (Wadell); a perfect ball would read `sphericityOfABall` with these views. */
  readonly sphericity: number;
  readonly sphericityOfABall: number;
  /** Ball with its centre anywhere; `null` when the outlines fix none. */
  readonly radiusMm: number | null;
  /** u, v, h. */
  readonly centreMm: PlantPoint | null;
  /** Ball with its centre on the plant axis. */
  readonly onAxisRadiusMm: number | null;
  /** Outermost less innermost of all outlines' form about the free centre. */
  readonly outOfRoundMm: number | null;
  /** The same as a share of the ball's radius, known without a scale. */
  readonly outOfRoundPercent: number | null;
}

/** Cubes along the longest side: for the volume, and for the surface, whose triangles a phone must carry. */
const CUBES = 128;
const SURFACE_CUBES = 56;
const MOST_TRIANGLES = 20_000;

/**
 * Cuts and measures the hull.
 *
 * @returns report, or `null` when the views do not close round the plant (one direction only)
 *
 * Notes: area is taken from a coarser grid than volume, which rounds the hull's edges over 4 mm on a middling plant: on known solids its bias is
 * under 0.7 %, and a ball's sphericity reads up to 0.006 too high.
 */
export function measureHull(scene: TurnedScene): HullReport | null {
  const { views, unit, usualRadius } = scene;
  const bias = hullBias(
    views.map(({ sight }) => sight),
    usualRadius,
  );
  const grid = hullOfScene(scene, CUBES);
  if (bias === null || grid === null) return null;
  const volume = hullVolume(grid);
  const coarse = hullOfScene(scene, SURFACE_CUBES) as HullGrid;
  const sphericity = wadellSphericity(hullVolume(coarse), surfaceArea(hullSurface(coarse)));
  const balls = ballsOfViews(views, { centre: [0, 0, usualRadius], radius: usualRadius });
  const inMm = <Value>(value: Value | undefined): Value | null => (unit === 'mm' ? (value ?? null) : null);
  return {
    volumeMl: inMm(volume / 1000),
    bias,
    correctedVolumeMl: inMm(volume / bias / 1000),
    sphericity,
    sphericityOfABall: bias ** (-1 / 3),
    radiusMm: inMm(balls?.free.radius),
    centreMm: inMm(balls?.free.centre),
    onAxisRadiusMm: inMm(balls?.onAxis.radius),
    outOfRoundMm: inMm(balls?.outOfRound),
    outOfRoundPercent: balls === null ? null : (100 * balls.outOfRound) / balls.free.radius,
  };
}

/**
 * The hull as a solid for the screen, at most 20 000 triangles, plan's unit.
 *
 * @returns `null` when the views do not close round the plant
 */
export function hullForScreen(scene: TurnedScene): Surface | null {
  for (let cubes = SURFACE_CUBES; ; cubes = Math.floor(0.85 * cubes)) {
    const grid = hullOfScene(scene, cubes);
    if (grid === null) return null;
    const surface = hullSurface(grid);
    if (surface.triangles.length <= 3 * MOST_TRIANGLES) return surface;
  }
}

/** The hull of a scene with so many cubes along its longest side; `null` when its views do not close round the plant. */
export function hullOfScene({ views }: TurnedScene, cubes: number): HullGrid | null {
  const outline = planOutline(views.flatMap(({ supports }) => supports));
  if (outline === null) return null;
  const pots = views.flatMap(({ view, sight }) =>
    view.potHalfWidthPx === null ? [] : [view.potHalfWidthPx * sight.unitPerPx],
  );
  return cutHull(
    views.map(({ field }) => field),
    {
      cubes,
      halfWidth: Math.max(...outline.flat().map(Math.abs)),
      potRadius: pots.length === 0 ? null : Math.max(...pots),
    },
  );
}
