import type { Tone } from './solid-scene.ts';

export type Shades = Readonly<Record<Tone, string>>;

/** The solid's colours as the screen's shade has them now. */
export function shadesNow(): Shades {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => style.getPropertyValue(name).trim();
  return {
    even: of('--solid'),
    weak: of('--solid-weak'),
    heavy: of('--solid-heavy'),
    pot: of('--solid-pot'),
  };
}

/** Light on a face: so much from everywhere, the rest by how squarely it faces the lamp. */
export const LIGHT = { around: 0.5, lamp: 0.5 } as const;
