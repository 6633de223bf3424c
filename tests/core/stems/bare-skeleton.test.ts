import { describe, expect, it } from 'vitest';
import { bareSkeleton } from '../../../core/stems/bare-skeleton.ts';

const SIDE = 240;

/** Five thin stems fan out from one foot; beside them hang as many small leaves as are asked for. */
function fan(leaves: number) {
  const data = new Uint8Array(SIDE * SIDE);
  const dot = (x: number, y: number, reach: number) => {
    for (let down = -reach; down <= reach; down++) {
      for (let right = -reach; right <= reach; right++) {
        data[Math.round(y + down) * SIDE + Math.round(x + right)] = 1;
      }
    }
  };
  for (const angle of [-1, -0.5, 0, 0.5, 1]) {
    for (let way = 0; way < 150; way++) {
      dot(SIDE / 2 + way * Math.sin(angle), 220 - way * Math.cos(angle), 2);
    }
  }
  for (let leaf = 0; leaf < leaves; leaf++) {
    for (let way = 0; way < 16; way++) dot(20 + 14 * leaf + way / 2, 20 + way, 1);
  }
  return { width: SIDE, height: SIDE, data };
}

describe('a silhouette of thin parts', () => {
  it('is a bare plant when its ends lead down to the foot', () => {
    const bare = bareSkeleton(fan(0), 220);
    expect(bare?.stems).toHaveLength(5);
    expect(bare?.loose).toBe(0);
  });

  it('is an open plant in leaf when many ends hang free', () => {
    expect(bareSkeleton(fan(8), 220)).toBeNull();
  });
});
