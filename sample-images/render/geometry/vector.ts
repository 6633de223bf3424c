/** Points and directions of the plant, mm: x to the viewer's right, y away from the viewer, z up, rim at 0. */
export type Vec3 = readonly [x: number, y: number, z: number];

export const UP: Vec3 = [0, 0, 1];

export function add(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vec3, factor: number): Vec3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

/** `start` moved by `distance` along `direction`. */
export function along(start: Vec3, direction: Vec3, distance: number): Vec3 {
  return [
    start[0] + direction[0] * distance,
    start[1] + direction[1] * distance,
    start[2] + direction[2] * distance,
  ];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function length(a: Vec3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** The unit vector of `a`; straight up for a zero vector, which has no direction of its own. */
export function unit(a: Vec3): Vec3 {
  const size = length(a);
  return size > 1e-12 ? scale(a, 1 / size) : UP;
}

/** The unit vector of a weighted sum of directions. */
export function blend(...parts: readonly (readonly [Vec3, number])[]): Vec3 {
  let sum: Vec3 = [0, 0, 0];
  for (const [direction, weight] of parts) sum = along(sum, direction, weight);
  return unit(sum);
}

/** The part of `a` square to the unit vector `axis`, made unit; any square direction if there is none. */
export function squareTo(a: Vec3, axis: Vec3): Vec3 {
  const rest = along(a, axis, -dot(a, axis));
  if (length(rest) > 1e-6) return unit(rest);
  return unit(cross(axis, Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
}

/** `a` turned about the unit vector `axis` by an angle in radians, right-handed (Rodrigues 1840). */
export function turnAbout(a: Vec3, axis: Vec3, angleRad: number): Vec3 {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  const lift = dot(a, axis) * (1 - cos);
  const side = cross(axis, a);
  return [
    a[0] * cos + side[0] * sin + axis[0] * lift,
    a[1] * cos + side[1] * sin + axis[1] * lift,
    a[2] * cos + side[2] * sin + axis[2] * lift,
  ];
}

/** The level direction of an azimuth in degrees: 0 to the viewer, 90 to the viewer's right. */
export function azimuthDirection(azimuthDeg: number): Vec3 {
  const angle = (azimuthDeg * Math.PI) / 180;
  return [Math.sin(angle), -Math.cos(angle), 0];
}

/** The azimuth of a point seen from the axis, degrees in [0, 360). */
export function azimuthOf(point: Vec3): number {
  return ((Math.atan2(point[0], -point[1]) * 180) / Math.PI + 360) % 360;
}

/** `count` directions spread evenly over the sphere (Fibonacci lattice, Swinbank & Purser 2006), top first. */
export function evenDirections(count: number, turnRad: number): Vec3[] {
  const goldenRad = Math.PI * (3 - Math.sqrt(5));
  return Array.from({ length: count }, (_, index) => {
    const z = 1 - (2 * index + 1) / count;
    const r = Math.sqrt(1 - z * z);
    const angle = turnRad + index * goldenRad;
    return [r * Math.cos(angle), r * Math.sin(angle), z];
  });
}
