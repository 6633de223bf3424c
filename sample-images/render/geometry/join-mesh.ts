import type { Mesh } from './mesh.ts';

/** One mesh of two; the first keeps its numbering. The originals stay as they were. */
export function joined(first: Mesh, second: Mesh): Mesh {
  const points = first.positions.length / 3;
  return {
    parts: [...first.parts, ...second.parts],
    positions: first.positions.concat(second.positions),
    normals: first.normals.concat(second.normals),
    coordinates: first.coordinates.concat(second.coordinates),
    corners: first.corners.concat(second.corners.map((corner) => corner + points)),
    partOf: first.partOf.concat(second.partOf.map((part) => part + first.parts.length)),
  };
}
