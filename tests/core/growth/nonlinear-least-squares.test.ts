import { describe, expect, it } from 'vitest';
import { nonlinearLeastSquares } from '../../../core/growth/nonlinear-least-squares.ts';

describe('nonlinear least squares', () => {
  it('finds the mean of three readings, with its variance and what they scatter', () => {
    const fit = nonlinearLeastSquares(([a = 0]) => [a - 1, a - 2, a - 3], [10]);
    expect(fit.parameters[0]).toBeCloseTo(2, 12);
    expect(fit.unitCovariance?.[0]?.[0]).toBeCloseTo(1 / 3, 12);
    expect(fit.residualSd).toBeCloseTo(1, 12);
    expect(fit.sumOfSquares).toBeCloseTo(2, 12);
    expect(fit.converged).toBe(true);
  });

  it('gives a straight line the covariance that its normal equations have', () => {
    // Places 0, 1, 2, 3: JᵀJ = [[4, 6], [6, 14]], its inverse [[0.7, −0.3], [−0.3, 0.2]].
    const values = [1, 3, 2, 5];
    const fit = nonlinearLeastSquares(([a = 0, b = 0]) => values.map((y, x) => a + b * x - y), [7, -4]);
    expect(fit.parameters[0]).toBeCloseTo(1.1, 10);
    expect(fit.parameters[1]).toBeCloseTo(1.1, 10);
    const expected = [
      [0.7, -0.3],
      [-0.3, 0.2],
    ];
    expected.forEach((row, i) => {
      row.forEach((value, j) => {
        expect(fit.unitCovariance?.[i]?.[j]).toBeCloseTo(value, 8);
      });
    });
  });

  it('does not care for the unit of a parameter', () => {
    const places = [0, 1, 2, 3, 4, 5];
    const seen = places.map((x) => 5 * Math.exp(-0.7 * x) + 0.01 * Math.sin(9 * x));
    const found = [1, 1e6, 1e-6].map((unit) => {
      const fit = nonlinearLeastSquares(
        ([a = 0, b = 0]) => places.map((x, k) => a * Math.exp(-b * unit * x) - (seen[k] as number)),
        [1, 1 / unit],
      );
      return (fit.parameters[1] as number) * unit;
    });
    expect((found[1] as number) / (found[0] as number)).toBeCloseTo(1, 9);
    expect((found[2] as number) / (found[0] as number)).toBeCloseTo(1, 9);
  });

  it('tells nothing of the scatter when there are as many parameters as residuals', () => {
    const fit = nonlinearLeastSquares(([a = 0, b = 0]) => [a - 1, b - 2], [5, 5]);
    expect(fit.residualSd).toBeNull();
    expect(fit.parameters[1]).toBeCloseTo(2, 12);
  });

  it('has no covariance for a parameter that nothing depends on', () => {
    const fit = nonlinearLeastSquares(([a = 0, b = 0]) => [a - 1, a - 2, 0 * b], [5, 5]);
    expect(fit.unitCovariance).toBeNull();
    expect(fit.parameters[0]).toBeCloseTo(1.5, 9);
  });

  it('keeps away from where the model cannot be computed', () => {
    const fit = nonlinearLeastSquares(([a = 0]) => [Math.log(a) - 1, Math.log(a) - 3], [0.01]);
    expect(Math.log(fit.parameters[0] as number)).toBeCloseTo(2, 9);
  });

  it('says what is wrong with a start', () => {
    expect(() => nonlinearLeastSquares(([a = 0]) => [a], [Number.NaN])).toThrow(
      'Expected a finite number for start but received NaN',
    );
    expect(() => nonlinearLeastSquares(() => [1], [1, 2])).toThrow('Expected at least 2 for residuals');
    expect(() => nonlinearLeastSquares(([a = 0]) => [Math.log(a)], [-1])).toThrow(
      'Expected a start with finite residuals for start but received "-1"',
    );
  });
});
