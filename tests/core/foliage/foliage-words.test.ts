import { describe, expect, it } from 'vitest';
import type { Foliage, YellowZone } from '../../../core/foliage/foliage.ts';
import { foliageAdvice, mayBeFlower, placesInWords } from '../../../core/foliage/foliage-words.ts';

const zone = (place: string, areaShare: number): YellowZone => ({
  place,
  areaShare,
  centrePx: [0, 0],
  outlinePx: [],
});

function foliage(yellow: number, brown = 0, more: Partial<Foliage> = {}): Foliage {
  const share = (value: number) => ({ share: value, plusMinus: 0.02, offBy: 0.2 });
  return {
    ok: true,
    green: share(1 - yellow - brown),
    yellow: share(yellow),
    brown: share(brown),
    notCompared: null,
    against: 'own',
    where: [zone('low on the left', 0.8 * yellow)],
    leafColour: { l: 45, a: -20, b: 30 },
    departure: 1,
    ...more,
  };
}

describe('advice on the leaf', () => {
  it('says where to clear yellow leaf once it has risen', () => {
    const advice = foliageAdvice(foliage(0.09), foliage(0.03));
    expect(advice).toMatchObject({
      tone: 'yellow',
      finding: 'Yellow leaf rose from 3 % (± 2) to 9 % (± 2) of the leaf seen.',
      act: 'Clear the yellow leaves low on the left.',
    });
    expect(advice?.caution).toContain('the label and local rules decide');
  });

  it('leaves yellow that stands high, where flowers stand, to the grower’s eye', () => {
    const where = [zone('high in the middle', 0.06), zone('low on the left', 0.02)];
    expect(mayBeFlower(foliage(0.09, 0, { where }))).toBe(true);
    expect(foliageAdvice(foliage(0.09, 0, { where }), foliage(0.03))?.act).toBe(
      'Clear the yellow leaves high in the middle and low on the left, unless those are yellow flowers.',
    );
    // Low on the plant it is leaf; and within its plus-minus it is nothing.
    expect(mayBeFlower(foliage(0.09))).toBe(false);
    expect(mayBeFlower(foliage(0.01, 0, { where }))).toBe(false);
  });

  it('is silent inside the plus-minus of both sittings', () => {
    // √2 × 2 points.
    expect(foliageAdvice(foliage(0.055), foliage(0.03))).toBeNull();
    expect(foliageAdvice(foliage(0.06), foliage(0.03))).not.toBeNull();
  });

  it('is silent when yellow leaf went, whatever is left of it', () => {
    expect(foliageAdvice(foliage(0.2), foliage(0.3))).toBeNull();
  });

  it('is silent when the two cannot be compared', () => {
    expect(foliageAdvice(foliage(0.2, 0, { notCompared: 'no white' }), foliage(0.03))).toBeNull();
    expect(foliageAdvice(foliage(0.2), foliage(0.03, 0, { against: 'usual' }))).toBeNull();
  });

  it('speaks of the larger rise', () => {
    expect(foliageAdvice(foliage(0.08, 0.2), foliage(0.03))?.tone).toBe('brown');
  });

  it('never names a disease', () => {
    for (const now of [foliage(0.2), foliage(0, 0.2)]) {
      const words = Object.values(foliageAdvice(now, foliage(0)) ?? {}).join(' ');
      expect(words).not.toMatch(/botrytis|rust|blight|virus|deficien|mildew|disease|infect/i);
      expect(words).toContain('Colour alone does not tell');
    }
  });
});

describe('places in words', () => {
  it('names the two with most yellow and adds up zones of one place', () => {
    expect(
      placesInWords([
        zone('high on the right', 0.05),
        zone('low on the left', 0.04),
        zone('low on the left', 0.03),
        zone('half-way up in the middle', 0.01),
      ]),
    ).toBe(' low on the left and high on the right');
  });

  it('is empty when yellow stands nowhere together', () => {
    expect(placesInWords([])).toBe('');
  });
});
