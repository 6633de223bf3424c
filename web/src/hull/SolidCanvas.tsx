import { useEffect, useRef, useState } from 'react';
import styles from './HullStage.module.css';
import type { SolidRenderer } from './solid-renderer.ts';
import type { SolidScene } from './solid-scene.ts';
import { shadesNow } from './solid-shades.ts';
import { paintedFaces, paintFaces } from './still-picture.ts';
import type { Direction, Turning } from './turning.ts';

interface SolidCanvasProps {
  scene: SolidScene;
  turning: Turning;
  lamp: Direction;
  /** Side of the square on the screen, CSS px. */
  width: number;
}

/** The solid by WebGL. Tells when the browser lends none. */
export function SolidCanvas({
  scene,
  turning,
  lamp,
  width,
  onNone,
}: SolidCanvasProps & { onNone: () => void }) {
  const place = useRef<HTMLCanvasElement>(null);
  const [renderer, setRenderer] = useState<SolidRenderer | null>(null);
  useEffect(() => {
    let made: SolidRenderer | null = null;
    let wanted = true;
    const lost = (event: Event) => {
      event.preventDefault();
      onNone();
    };
    const canvas = place.current;
    canvas?.addEventListener('webglcontextlost', lost);
    import('./solid-renderer.ts')
      .then(({ createSolidRenderer }) => {
        if (!wanted || !canvas) return;
        made = createSolidRenderer(canvas, scene, shadesNow());
        setRenderer(made);
      })
      .catch(onNone);
    return () => {
      wanted = false;
      canvas?.removeEventListener('webglcontextlost', lost);
      made?.free();
    };
  }, [scene, onNone]);
  useEffect(() => {
    renderer?.draw({ turning, lamp, sidePx: Math.round(width * devicePixelRatio) });
  }, [renderer, turning, lamp, width]);
  return <canvas ref={place} className={styles.canvas} data-testid="solid" />;
}

/** The solid as a picture painted face by face, where there is no WebGL. */
export function StillCanvas({ scene, turning, lamp, width }: SolidCanvasProps) {
  const place = useRef<HTMLCanvasElement>(null);
  const sidePx = Math.round(width * devicePixelRatio);
  useEffect(() => {
    if (!place.current) return;
    paintFaces(place.current, paintedFaces(scene, { turning, sidePx, lamp }), shadesNow());
  }, [scene, turning, lamp, sidePx]);
  return <canvas ref={place} width={sidePx} height={sidePx} className={styles.canvas} data-testid="still" />;
}
