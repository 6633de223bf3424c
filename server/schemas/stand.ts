import { z } from 'zod';
import { daySchema, idSchema } from './basics.ts';
import { pointPx } from './report.ts';

/** Paper that the stand sheet is printed on. */
export const sheetPaperSchema = z.enum(['A4', 'Letter'], 'The sheet is printed on A4 or Letter.');

export const lightSideSchema = z.enum(
  ['left', 'right', 'behind-camera', 'behind-plant', 'above'],
  'Say where the light comes from as seen from the camera: left, right, behind-camera, behind-plant or above.',
);

export type LightSide = z.infer<typeof lightSideSchema>;

/** The printed sheet of ring marks, and where it is fixed. */
export const standSheetSchema = z.object(
  {
    paper: sheetPaperSchema,
    place: z.enum(['backdrop', 'bench'], 'The sheet hangs on the backdrop or lies on the bench.'),
    /** Distance of the pot's middle in front of the sheet, towards the camera; 0 when the pot stands on the sheet. */
    plantInFrontMm: z
      .number('Give how far the pot’s middle stands in front of the sheet, in millimetres, for example 150.')
      .min(0, 'The pot cannot stand behind the sheet; give 0 or more millimetres.')
      .max(3000, 'More than 3000 mm in front of the sheet cannot be right; give millimetres.'),
  },
  'Describe the sheet by its paper, its place and plantInFrontMm; null for none.',
);
export type StandSheet = z.infer<typeof standSheetSchema>;

/** What the grower tells about a stand. `null` is what is not known. */
export const standFormSchema = z.object({
  name: z
    .string('Give the stand a name.')
    .trim()
    .min(1, 'Give the stand a name.')
    .max(80, 'Keep the name to 80 letters or fewer.'),
  /** As seen from the camera. */
  lightSide: lightSideSchema.nullable().default(null),
  backdrop: z
    .string()
    .trim()
    .max(120, 'Keep the backdrop to 120 letters or fewer.')
    .transform((words) => words || null)
    .nullable()
    .default(null),
  /** Camera to the pot's middle. */
  cameraDistanceMm: z
    .number('Give the distance from camera to pot in millimetres, for example 1500.')
    .min(200, 'A camera nearer than 200 mm cannot see a whole plant; give millimetres.')
    .max(20_000, 'A camera farther than 20000 mm cannot be right; give millimetres.')
    .nullable()
    .default(null),
  /** Lens above what the pot stands on; below it is negative. */
  cameraHeightMm: z
    .number('Give the height of the lens above the pot’s place in millimetres, for example 250.')
    .min(-2000, 'A lens more than 2000 mm below the pot cannot be right; give millimetres.')
    .max(5000, 'A lens more than 5000 mm above the pot cannot be right; give millimetres.')
    .nullable()
    .default(null),
  /** `rim`: from each plant's pot rim. `none`: nothing was set up; a plant's rim still counts where it is known. */
  scaleFrom: z
    .enum(['sheet', 'rim', 'none'], 'The scale comes from the sheet, the pot rim, or none.')
    .default('none'),
  sheet: standSheetSchema.nullable().default(null),
});
export type StandForm = z.infer<typeof standFormSchema>;

/** Where the stand is on earth, for the season of the light. */
export const standPlaceSchema = z.object({
  latitudeDeg: z
    .number('Give the latitude in degrees, north positive, for example 52.')
    .min(-90, 'Give the latitude from −90 to 90 degrees.')
    .max(90, 'Give the latitude from −90 to 90 degrees.')
    .nullable()
    .default(null),
  /** Compass, clockwise from true north: from the pot towards the middle of the window; `null` for light from all sides. */
  lightBearingDeg: z
    .number('Give the bearing of the window in degrees, for example 180 for south.')
    .min(0, 'Give the bearing as 0 to 359 degrees, clockwise from north.')
    .lt(360, 'Give the bearing as 0 to 359 degrees, clockwise from north.')
    .nullable()
    .default(null),
});
export type StandPlace = z.infer<typeof standPlaceSchema>;

const sheetWhereNeeded = 'To have the scale from the sheet, say which paper it is and where it is fixed.';

/** A new stand. `sinceDay`: how long it has stood so; today when left out. */
export const newStandSchema = standFormSchema
  .extend({ ...standPlaceSchema.shape, sinceDay: daySchema.optional() })
  .refine(({ scaleFrom, sheet }) => scaleFrom !== 'sheet' || sheet !== null, {
    path: ['sheet'],
    message: sheetWhereNeeded,
  });

/**
 * What may be changed later: only the fields sent. `sinceDay` is the day from which the change holds; today when
 * left out.
 */
export const standChangeSchema = z
  .object({
    name: standFormSchema.shape.name,
    lightSide: standFormSchema.shape.lightSide.unwrap(),
    backdrop: standFormSchema.shape.backdrop.unwrap(),
    cameraDistanceMm: standFormSchema.shape.cameraDistanceMm.unwrap(),
    cameraHeightMm: standFormSchema.shape.cameraHeightMm.unwrap(),
    scaleFrom: standFormSchema.shape.scaleFrom.unwrap(),
    sheet: standFormSchema.shape.sheet.unwrap(),
    latitudeDeg: standPlaceSchema.shape.latitudeDeg.unwrap(),
    lightBearingDeg: standPlaceSchema.shape.lightBearingDeg.unwrap(),
    sinceDay: daySchema,
  })
  .partial();
export type StandChange = z.infer<typeof standChangeSchema>;

/** What was seen of the stand sheet on the empty photo. */
export const sheetSummarySchema = z.object({
  marksFound: z.int().nonnegative(),
  /** How many marks the sheet has. */
  marksOfSheet: z.int().positive(),
  /** Millimetres a px of the photo in the sheet's plane; `null` when too few marks were found. */
  mmPerPxAtSheet: z.number().positive().nullable(),
  /** Camera to the pot's middle as the sheet tells it; `null` when it cannot be told. */
  cameraDistanceMm: z.number().positive().nullable(),
  /** Whether the grey patches could be read. */
  greyFound: z.boolean(),
  marksPx: z.array(pointPx).readonly(),
  /** What was found, and what to do if that is too little. */
  words: z.string(),
});
export type SheetSummary = z.infer<typeof sheetSummarySchema>;

/** What was seen of the empty photo as soon as it came. */
export const emptyPhotoCheckSchema = z.object({
  /** Whether anything speaks against keeping it: then `words` says what to do. */
  good: z.boolean(),
  brightness: z.enum(['good', 'too-dark', 'too-bright']),
  /** `unknown`: nothing in the picture has an edge to judge by, as before a bare wall. */
  sharpness: z.enum(['good', 'blurred', 'unknown']),
  words: z.string(),
});
export type EmptyPhotoCheck = z.infer<typeof emptyPhotoCheckSchema>;

export const standSchema = z.object({
  ...standFormSchema.shape,
  ...standPlaceSchema.shape,
  backdrop: z.string().nullable(),
  id: idSchema,
  /** Number of the version in force, from 1. */
  version: z.int().positive(),
  emptyPhoto: z
    .object({
      /** Upright JPEG; takes `?width=` 320, 800 or 1600. */
      url: z.string(),
      /** Camera's local time without zone. */
      takenAt: z.string().nullable(),
      widthPx: z.int(),
      heightPx: z.int(),
      check: emptyPhotoCheckSchema,
      /** `null` when the stand has no sheet and none was seen. */
      reading: sheetSummarySchema.nullable(),
    })
    .nullable(),
  /** What new photos are brought in line with: the empty photo, else the first photo taken on this version. */
  reference: z.enum(['empty-photo', 'first-photo']).nullable(),
  sinceDay: daySchema,
  /** Newest first; `changed` says in words what became different. */
  history: z.array(z.object({ version: z.int().positive(), sinceDay: daySchema, changed: z.string() })),
  /** Plants that stand here and are on the bench. */
  plants: z.int().nonnegative(),
  /** Put away by the grower; kept, and new photos are taken without it. */
  putAway: z.boolean(),
});
export type Stand = z.infer<typeof standSchema>;

export const standListSchema = z.array(standSchema);

/** What lies over the live picture of the camera, px of a photo of `widthPx` × `heightPx`. */
export const standOverlaySchema = z.object({
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
  /** The plant's last silhouette, in the stand's frame; empty when it has none on this stand. */
  outlinePx: z.array(pointPx).readonly(),
  /** Day of that silhouette. */
  outlineDay: daySchema.nullable(),
  /** The pot rim's two ends. */
  rim: z.object({ leftPx: pointPx, rightPx: pointPx }).nullable(),
  /** Middles of the sheet's ring marks. */
  marksPx: z.array(pointPx).readonly(),
  /** The picture that the frame comes from; takes `?width=`. */
  photoUrl: z.string(),
});
export type StandOverlay = z.infer<typeof standOverlaySchema>;
