import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../../renderer/gantt/geometry.ts';
import { barAt, laneAt } from '../../../renderer/gantt/hit-test.ts';
import { fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { at } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

const { lanes } = aBoard();
const geometry = geometryOf(300, lanes.length);
const scale = fitted(at('2026-11-30', '06:00'), at('2026-11-30', '18:00'), 1200);
const onBar = (lane: number) => lane * geometry.laneHeight + geometry.barY + 5;

describe('what lies under the pointer', () => {
  it('is the bar there', () => {
    const bar = barOf(lanes, '1042/2:shear');
    const middle = (xOf(scale, bar.start) + xOf(scale, bar.end)) / 2;
    expect(barAt(lanes, geometry, scale, middle, onBar(0))?.operation).toBe('1042/2:shear');
  });

  it('is the operation that a changeover is for', () => {
    const bar = barOf(lanes, '1042/3:shear');
    expect(bar.changeoverSeconds).toBe(240);
    const inChangeover = xOf(scale, bar.start - 60);
    expect(barAt(lanes, geometry, scale, inChangeover, onBar(0))?.operation).toBe('1042/3:shear');
  });

  it('is a bar thinner than a finger when the pointer is just beside it', () => {
    const far = fitted(at('2026-11-30', '06:00'), at('2026-12-28', '06:00'), 1000);
    const bar = barOf(lanes, '1042/2:brake');
    expect(xOf(far, bar.end) - xOf(far, bar.start)).toBeLessThan(1);
    expect(barAt(lanes, geometry, far, xOf(far, bar.end) + 2, onBar(2))?.operation).toBe('1042/2:brake');
  });

  it('is nothing on empty ground, above a bar or below the lanes', () => {
    const late = xOf(scale, at('2026-11-30', '17:00'));
    const bar = barOf(lanes, '1042/1:shear');
    expect(barAt(lanes, geometry, scale, late, onBar(0))).toBeNull();
    expect(barAt(lanes, geometry, scale, xOf(scale, bar.start) + 1, 2)).toBeNull();
    expect(laneAt(lanes, geometry, 3 * geometry.laneHeight + 1)).toBeNull();
    expect(laneAt(lanes, geometry, -1)).toBeNull();
  });
});
