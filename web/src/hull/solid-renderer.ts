import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Scene,
  WebGLRenderer,
} from 'three';
import type { SolidScene } from './solid-scene.ts';
import { LIGHT, type Shades } from './solid-shades.ts';
import { type Direction, eyeAxes, type Turning } from './turning.ts';

/** Draws a solid on a canvas by WebGL; the one door to three. */
export interface SolidRenderer {
  draw(look: { turning: Turning; sidePx: number; lamp: Direction }): void;
  free(): void;
}

/** Throws when the browser lends no WebGL after all. */
export function createSolidRenderer(
  canvas: HTMLCanvasElement,
  scene: SolidScene,
  shades: Shades,
): SolidRenderer {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  renderer.setPixelRatio(1);
  const geometry = geometryOf(scene, shades);
  const material = new MeshLambertMaterial({ vertexColors: true });
  const lamp = new DirectionalLight(0xffffff, LIGHT.lamp * Math.PI);
  const world = new Scene().add(
    new Mesh(geometry, material),
    new AmbientLight(0xffffff, LIGHT.around * Math.PI),
    lamp,
  );
  const { reach, middle } = scene;
  const eye = new OrthographicCamera(-reach, reach, reach, -reach, 0.1 * reach, 8 * reach);
  return {
    draw({ turning, sidePx, lamp: towards }) {
      const axes = eyeAxes(turning);
      renderer.setSize(sidePx, sidePx, false);
      eye.up.set(...inThree(axes.up));
      eye.position.set(
        ...inThree([
          middle[0] + 4 * reach * axes.near[0],
          middle[1] + 4 * reach * axes.near[1],
          middle[2] + 4 * reach * axes.near[2],
        ]),
      );
      eye.lookAt(...inThree(middle));
      lamp.position.set(...inThree(towards));
      renderer.render(world, eye);
    },
    free() {
      geometry.dispose();
      material.dispose();
      renderer.dispose();
      // A page may hold few contexts only; a closed solid gives its own back at once.
      renderer.forceContextLoss();
    },
  };
}

/** three has y up: v to its right, h up, u towards the eye. */
function inThree([u, v, h]: Direction): [number, number, number] {
  return [v, h, u];
}

function geometryOf({ corners, triangles, normals, tones }: SolidScene, shades: Shades): BufferGeometry {
  const places = new Float32Array(corners.length);
  const facings = new Float32Array(corners.length);
  const colours = new Float32Array(corners.length);
  const colour = new Color();
  const turned = (from: Float32Array, k: number) =>
    inThree([from[k] as number, from[k + 1] as number, from[k + 2] as number]);
  tones.forEach((tone, corner) => {
    const k = 3 * corner;
    places.set(turned(corners, k), k);
    facings.set(turned(normals, k), k);
    colour.set(shades[tone]);
    colours.set([colour.r, colour.g, colour.b], k);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(places, 3));
  geometry.setAttribute('normal', new BufferAttribute(facings, 3));
  geometry.setAttribute('color', new BufferAttribute(colours, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}
