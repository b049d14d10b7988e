import { describe, expect, it } from 'vitest';
import { geometryOf, underOf } from '../../../renderer/gantt/geometry.ts';

describe('the height of lanes', () => {
  it('fills the window with one to four machines', () => {
    for (const lanes of [1, 2, 3, 4]) expect(geometryOf(600, lanes).laneHeight).toBe(600 / lanes);
  });

  it('is bounded with more, and never too low for a number', () => {
    expect(geometryOf(2000, 5).laneHeight).toBe(184);
    expect(geometryOf(300, 12).laneHeight).toBe(96);
  });

  it('leaves room for a published plan between bar and rail', () => {
    const geometry = geometryOf(600, 4, true);
    const under = underOf(geometry);
    expect(under.barY).toBeGreaterThan(geometry.barY + geometry.barHeight);
    expect(under.barY + under.barHeight).toBeLessThanOrEqual(geometry.railY);
  });
});
