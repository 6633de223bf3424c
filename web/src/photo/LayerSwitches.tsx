import type { ReactNode } from 'react';
import styles from './LayerSwitches.module.css';
import { LAYER_WORDS, type Layer, switchLayer } from './layers.ts';

/** One switch a layer, each with a sample of how its line looks; `children` are further switches. */
export function LayerSwitches({
  layers,
  shown,
  children,
}: {
  layers: readonly Layer[];
  shown: readonly Layer[];
  children?: ReactNode;
}) {
  return (
    <fieldset className={styles.switches}>
      <legend className="only-heard">Drawn on the photo</legend>
      {layers.map((layer) => (
        <button
          key={layer}
          type="button"
          className={styles.switch}
          aria-pressed={shown.includes(layer)}
          onClick={() => switchLayer(layer, !shown.includes(layer))}
        >
          <svg width="26" height="16" viewBox="0 0 26 16" aria-hidden="true">
            <rect width="26" height="16" rx="4" fill="var(--draw-leaf)" />
            {SAMPLES[layer]}
          </svg>
          {LAYER_WORDS[layer]}
        </button>
      ))}
      {children}
    </fieldset>
  );
}

const SAMPLES: Record<Layer, ReactNode> = {
  ball: <path d="M5 15a8 8 0 0 1 16 0" fill="none" stroke="var(--draw-ball)" strokeWidth="2.4" />,
  outline: (
    <path d="M3 11c3-7 5 1 8-4s5 3 7-1 3 2 5 2" fill="none" stroke="var(--draw-outline)" strokeWidth="2" />
  ),
  unsure: <path d="M3 3l10 10M9 2l11 11M16 2l7 7M3 9l4 4" stroke="var(--draw-unsure)" strokeWidth="2.4" />,
  parts: (
    <g fill="none" strokeWidth="1.8">
      <circle cx="8" cy="6" r="3.4" stroke="var(--draw-flower)" />
      <path d="M13 6h9l-1.6 8h-6z" stroke="var(--draw-pot)" strokeDasharray="4 2" />
    </g>
  ),
  cuts: <path d="M7 3l6 10M10 8l9-4" fill="none" stroke="var(--draw-cut)" strokeWidth="2.6" />,
  weak: <path d="M3 13L13 3M9 14L20 3M16 14l7-7" stroke="var(--draw-hatch)" strokeWidth="2" />,
  yellow: (
    <g stroke="var(--draw-yellow)">
      <path d="M4 5.5h18M4 8.5h18M4 11.5h18" strokeWidth="1.3" />
      <rect x="4" y="3" width="18" height="10.5" rx="4" fill="none" strokeWidth="1.8" />
    </g>
  ),
  thin: (
    <g stroke="var(--draw-thin)" fill="none">
      <path d="M5 6a12 12 0 0 1 16 0" strokeWidth="2.6" />
      <path d="M5 6l3.5 8M21 6l-3.5 8" strokeWidth="1.6" strokeDasharray="2.5 2" />
    </g>
  ),
  axis: <path d="M13 1v14M5 12h16" stroke="var(--draw-axis)" strokeWidth="2" strokeDasharray="3 2" />,
};
