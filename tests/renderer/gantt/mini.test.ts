import { describe, expect, it } from 'vitest';
import { framesOf } from '../../../renderer/gantt/mini.ts';
import { fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { at, NOW } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

const { lanes } = aBoard();
const [shear] = lanes;
const near = fitted(NOW, at('2026-11-30', '12:00'), 1200);
const far = fitted(NOW, at('2026-12-20', '12:00'), 200);

describe('frames in a small picture of the plan', () => {
  it('stand around the bars that matter, and name their lines', () => {
    const frames = framesOf(shear!, near, (bar) => bar.lineId !== '1042/2');
    expect(frames.map(({ words }) => words)).toEqual(['1042/1', '1042/3']);
    const first = barOf(lanes, '1042/1:shear');
    expect(frames[0]).toMatchObject({ x: xOf(near, first.start), mark: true });
    expect(frames[0]!.x + frames[0]!.width).toBeCloseTo(xOf(near, first.end), 6);
  });

  it('can still be seen from far away, where only one has room for its mark', () => {
    const frames = framesOf(shear!, far, () => true);
    expect(frames.every(({ width }) => width >= 4)).toBe(true);
    expect(frames.map(({ mark }) => mark)).toEqual([true, false, false]);
  });

  it('are left out for what is not in the window', () => {
    const later = fitted(at('2026-12-10', '07:00'), at('2026-12-11', '07:00'), 400);
    expect(framesOf(shear!, later, () => true)).toEqual([]);
  });
});
