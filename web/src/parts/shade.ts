import { createKeptStore } from './store.ts';

export const SHADES = ['device', 'light', 'dark'] as const;
export type Shade = (typeof SHADES)[number];

/** The grower's choice of light or dark, kept on this device. */
export const shadeChoice = createKeptStore<Shade>('rondure.shade', 'device', (kept): kept is Shade =>
  SHADES.includes(kept as Shade),
);

/** Paints the choice now and whenever the device changes its mind. */
export function followShade(): void {
  const deviceDark = window.matchMedia('(prefers-color-scheme: dark)');
  deviceDark.addEventListener('change', paintShade);
  paintShade();
}

export function chooseShade(shade: Shade): void {
  shadeChoice.write(shade);
  paintShade();
}

function paintShade(): void {
  const choice = shadeChoice.read();
  const dark =
    choice === 'dark' || (choice === 'device' && window.matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.dataset.shade = dark ? 'dark' : 'light';
}
