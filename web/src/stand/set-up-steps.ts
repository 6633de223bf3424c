/** The steps of setting up a stand, in order. */
export const SET_UP_STEPS = ['camera', 'backdrop', 'place', 'scale', 'empty'] as const;
export type SetUpStep = (typeof SET_UP_STEPS)[number];

export const STEP_NAMES: Record<SetUpStep, string> = {
  camera: 'Where the camera stands',
  backdrop: 'What is behind the plant',
  place: 'Where pot and light are',
  scale: 'What gives the millimetres',
  empty: 'The empty photo',
};

/** Which step the entry of a refused field stands on. */
const STEP_OF_FIELD: Readonly<Record<string, SetUpStep>> = {
  name: 'camera',
  cameraDistanceMm: 'camera',
  cameraHeightMm: 'camera',
  backdrop: 'backdrop',
  lightSide: 'place',
  latitudeDeg: 'place',
  lightBearingDeg: 'place',
  scaleFrom: 'scale',
  sheet: 'scale',
  plantInFrontMm: 'scale',
  'sheet/plantInFrontMm': 'scale',
};

/** The first step with a refused entry; `null` when the fault belongs to none. */
export function stepOfFault(fields: Readonly<Record<string, string>>): SetUpStep | null {
  return (
    SET_UP_STEPS.find((step) => Object.keys(fields).some((name) => STEP_OF_FIELD[name] === step)) ?? null
  );
}
