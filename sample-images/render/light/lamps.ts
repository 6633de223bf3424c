import { along, blend, cross, evenDirections, squareTo, type Vec3 } from '../geometry/vector.ts';
import { raised } from '../plant/skeleton.ts';

/** The light of a place. Azimuths are in the room: 0 from behind the camera, 90 from the right. */
export interface LightSpec {
  readonly keyAzimuthDeg: number;
  readonly keyElevationDeg: number;
  /** Half the angle the window (or lamp) spans as seen from the plant: larger is softer. */
  readonly keySpreadDeg: number;
  readonly keyStrength: number;
  readonly keyColour: Vec3;
  readonly roomStrength: number;
  readonly roomColour: Vec3;
  /** Light thrown back up by the bench. */
  readonly bounceColour: Vec3;
}

/** Light from one far direction, with how much falls on a surface that faces it. */
export interface Lamp {
  readonly toward: Vec3;
  readonly strength: Vec3;
  /** Part of the window: bright enough to shine. */
  readonly key: boolean;
}

const KEY_LAMPS = 12;
const ROOM_LAMPS = 22;
const BOUNCE_LAMPS = 5;

/** Splits window, room and bench light into many small lamps, so that their shadows add up to soft ones. */
export function lampsOf(light: LightSpec): Lamp[] {
  const key = raised(light.keyAzimuthDeg, light.keyElevationDeg);
  const side = squareTo([1, 0, 0], key);
  const other = cross(key, side);
  const spread = Math.tan((light.keySpreadDeg * Math.PI) / 180);
  const lamps: Lamp[] = [];
  for (let index = 0; index < KEY_LAMPS; index++) {
    // Sunflower disc (Vogel 1979): equal shares of the window's area.
    const out = spread * Math.sqrt((index + 0.5) / KEY_LAMPS);
    const angle = index * Math.PI * (3 - Math.sqrt(5));
    const toward = along(along(key, side, out * Math.cos(angle)), other, out * Math.sin(angle));
    lamps.push({
      toward: blend([toward, 1]),
      strength: tinted(light.keyColour, light.keyStrength / KEY_LAMPS),
      key: true,
    });
  }
  const dome = evenDirections(ROOM_LAMPS * 2, 0.7).slice(0, ROOM_LAMPS);
  for (const toward of dome) {
    // A room is brightest overhead and on the window's side, dimmest low down at the back.
    const side = toward[0] * key[0] + toward[1] * key[1];
    const share = (0.55 + 0.65 * toward[2] + 0.35 * side) * (toward[1] > 0 ? 0.8 : 1.1);
    lamps.push({
      toward,
      strength: tinted(light.roomColour, (2 * light.roomStrength * Math.max(0.1, share)) / ROOM_LAMPS),
      key: false,
    });
  }
  for (let index = 0; index < BOUNCE_LAMPS; index++) {
    const toward = raised(36 + index * 72, -38);
    lamps.push({ toward, strength: tinted(light.bounceColour, 1 / BOUNCE_LAMPS), key: false });
  }
  return lamps;
}

function tinted(colour: Vec3, strength: number): Vec3 {
  return [colour[0] * strength, colour[1] * strength, colour[2] * strength];
}
