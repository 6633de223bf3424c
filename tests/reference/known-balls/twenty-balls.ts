import type { BallInSpace, Bump } from './ball-in-space.ts';

const UP = { upDeg: 90, roundDeg: 0 };
const RIGHT = { upDeg: 0, roundDeg: 0 };
const LEFT = { upDeg: 0, roundDeg: 180 };
const SHOULDER_RIGHT = { upDeg: 45, roundDeg: 0 };
const SHOULDER_LEFT = { upDeg: 45, roundDeg: 180 };
const CAMERA = { upDeg: 0, roundDeg: 90 };

const ball = (name: string, bumps: readonly Bump[], told: Partial<BallInSpace> = {}): BallInSpace => ({
  name,
  bumps,
  flattening: 1,
  lean: 0,
  ...told,
});

/** Twenty balls whose dents, bulges, flattening and lean are known. */
export const TWENTY_BALLS: readonly BallInSpace[] = [
  ball('even ball', []),
  ball('dent of 5 % on top', [{ height: -0.05, widthDeg: 20, ...UP }]),
  ball('dent of 12 % on top', [{ height: -0.12, widthDeg: 20, ...UP }]),
  ball('dent of 20 % on the right shoulder', [{ height: -0.2, widthDeg: 25, ...SHOULDER_RIGHT }]),
  ball('dent of 10 % at the right', [{ height: -0.1, widthDeg: 25, ...RIGHT }]),
  ball('dent of 10 % at the left', [{ height: -0.1, widthDeg: 25, ...LEFT }]),
  ball('dent of 20 % towards the camera', [{ height: -0.2, widthDeg: 25, ...CAMERA }]),
  ball('dent of 15 % half round to the camera', [{ height: -0.15, widthDeg: 25, upDeg: 20, roundDeg: 45 }]),
  ball('narrow dent of 15 % on top', [{ height: -0.15, widthDeg: 8, ...UP }]),
  ball('bulge of 5 % on top', [{ height: 0.05, widthDeg: 20, ...UP }]),
  ball('bulge of 15 % at the right', [{ height: 0.15, widthDeg: 25, ...RIGHT }]),
  ball('bulge of 15 % on the left shoulder', [{ height: 0.15, widthDeg: 25, ...SHOULDER_LEFT }]),
  ball('narrow bulge of 20 % on the left shoulder', [{ height: 0.2, widthDeg: 8, ...SHOULDER_LEFT }]),
  ball('bulge of 25 % behind', [{ height: 0.25, widthDeg: 30, upDeg: 10, roundDeg: -90 }]),
  ball('bulge right, dent left', [
    { height: 0.1, widthDeg: 25, ...RIGHT },
    { height: -0.1, widthDeg: 25, ...LEFT },
  ]),
  ball('flattened to 0.85', [], { flattening: 0.85 }),
  ball('drawn up to 1.15', [], { flattening: 1.15 }),
  ball('leaning 8 % to the right', [], { lean: 0.08 }),
  ball('leaning 15 % to the left', [], { lean: -0.15 }),
  ball(
    'flattened, leaning, dented and bulged',
    [
      { height: -0.1, widthDeg: 20, ...SHOULDER_RIGHT },
      { height: 0.08, widthDeg: 15, ...LEFT },
    ],
    { flattening: 0.92, lean: 0.05 },
  ),
];
