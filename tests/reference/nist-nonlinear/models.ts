/** Up to nine parameters; a set that has fewer leaves the last ones out. */
export type ModelParameters = readonly [
  b1: number,
  b2: number,
  b3: number,
  b4: number,
  b5: number,
  b6: number,
  b7: number,
  b8: number,
  b9: number,
];

/** A model of the reference sets: the response at an observation's one or two predictors. */
export type ReferenceModel = (parameters: ModelParameters, x: number, x2: number) => number;

const { atan, cos, exp, sin, PI } = Math;

const exponentialRise: ReferenceModel = ([b1, b2], x) => b1 * (1 - exp(-b2 * x));

const decayOverLine: ReferenceModel = ([b1, b2, b3], x) => exp(-b1 * x) / (b2 + b3 * x);

const threeDecays: ReferenceModel = ([b1, b2, b3, b4, b5, b6], x) =>
  b1 * exp(-b2 * x) + b3 * exp(-b4 * x) + b5 * exp(-b6 * x);

const twoPeaks: ReferenceModel = ([b1, b2, b3, b4, b5, b6, b7, b8], x) =>
  b1 * exp(-b2 * x) + b3 * exp(-((x - b4) ** 2) / b5 ** 2) + b6 * exp(-((x - b7) ** 2) / b8 ** 2);

const cubicOverCubic: ReferenceModel = ([b1, b2, b3, b4, b5, b6, b7], x) =>
  (b1 + b2 * x + b3 * x ** 2 + b4 * x ** 3) / (1 + b5 * x + b6 * x ** 2 + b7 * x ** 3);

const threeCycles: ReferenceModel = ([b1, b2, b3, b4, b5, b6, b7, b8, b9], x) => {
  const turn = 2 * PI * x;
  return (
    b1 +
    b2 * cos(turn / 12) +
    b3 * sin(turn / 12) +
    b5 * cos(turn / b4) +
    b6 * sin(turn / b4) +
    b8 * cos(turn / b7) +
    b9 * sin(turn / b7)
  );
};

/** The models as each set's file prints them; Nelson's response is the logarithm of the printed one. */
export const REFERENCE_MODELS: Readonly<Record<string, ReferenceModel>> = {
  Bennett5: ([b1, b2, b3], x) => b1 * (b2 + x) ** (-1 / b3),
  BoxBOD: exponentialRise,
  Chwirut1: decayOverLine,
  Chwirut2: decayOverLine,
  DanWood: ([b1, b2], x) => b1 * x ** b2,
  ENSO: threeCycles,
  Eckerle4: ([b1, b2, b3], x) => (b1 / b2) * exp(-0.5 * ((x - b3) / b2) ** 2),
  Gauss1: twoPeaks,
  Gauss2: twoPeaks,
  Gauss3: twoPeaks,
  Hahn1: cubicOverCubic,
  Kirby2: ([b1, b2, b3, b4, b5], x) => (b1 + b2 * x + b3 * x ** 2) / (1 + b4 * x + b5 * x ** 2),
  Lanczos1: threeDecays,
  Lanczos2: threeDecays,
  Lanczos3: threeDecays,
  MGH09: ([b1, b2, b3, b4], x) => (b1 * (x ** 2 + x * b2)) / (x ** 2 + x * b3 + b4),
  MGH10: ([b1, b2, b3], x) => b1 * exp(b2 / (x + b3)),
  MGH17: ([b1, b2, b3, b4, b5], x) => b1 + b2 * exp(-x * b4) + b3 * exp(-x * b5),
  Misra1a: exponentialRise,
  Misra1b: ([b1, b2], x) => b1 * (1 - (1 + (b2 * x) / 2) ** -2),
  Misra1c: ([b1, b2], x) => b1 * (1 - (1 + 2 * b2 * x) ** -0.5),
  Misra1d: ([b1, b2], x) => (b1 * b2 * x) / (1 + b2 * x),
  Nelson: ([b1, b2, b3], x, x2) => b1 - b2 * x * exp(-b3 * x2),
  Rat42: ([b1, b2, b3], x) => b1 / (1 + exp(b2 - b3 * x)),
  Rat43: ([b1, b2, b3, b4], x) => b1 / (1 + exp(b2 - b3 * x)) ** (1 / b4),
  Roszman1: ([b1, b2, b3, b4], x) => b1 - b2 * x - atan(b3 / (x - b4)) / PI,
  Thurber: cubicOverCubic,
};
