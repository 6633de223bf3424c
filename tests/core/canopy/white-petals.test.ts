import { expect, test } from 'vitest';
import { allowingPetals } from '../../../core/canopy/white-petals.ts';

const backdropOf = (l: number, b = 0) => ({
  width: 1,
  height: 1,
  l: new Float32Array([l]),
  a: new Float32Array([0]),
  b: new Float32Array([b]),
});
const heard = (odds: number, backdrop: ReturnType<typeof backdropOf>, flower: number) =>
  allowingPetals({ width: 1, height: 1, logOdds: new Float32Array([odds]) }, backdrop, {
    flower: new Float32Array([flower]),
  }).logOdds[0];

test('before white, likeness to the backdrop says little against what the network takes for flower', () => {
  expect(heard(-3, backdropOf(95), 0.9)).toBeCloseTo(Math.log(0.9), 5);
  expect(heard(-3, backdropOf(95), 0.2)).toBeCloseTo(Math.log(0.2), 5);
});

test('colour is taken at its word where no petal can be: no flower, a dark backdrop, a coloured one', () => {
  expect(heard(-3, backdropOf(95), 0)).toBe(-3);
  expect(heard(-3, backdropOf(30), 0.9)).toBe(-3);
  expect(heard(-3, backdropOf(80, 30), 0.9)).toBe(-3);
});

test('what stands out from the backdrop stays as sure as it was', () => {
  expect(heard(2.5, backdropOf(95), 0.9)).toBe(2.5);
});
