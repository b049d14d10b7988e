import { describe, expect, it } from 'vitest';
import { barBox, geometryOf } from '../../../renderer/gantt/geometry.ts';
import { barAt } from '../../../renderer/gantt/hit-test.ts';
import { barsIn } from '../../../renderer/gantt/lanes.ts';
import { fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { aBrake, aPart, aShear, at } from '../../support/builders.ts';
import { aBench, aFurtherStep } from '../../support/further-step-builders.ts';
import { aBoard } from './a-board.ts';

/** Three lines that are away for two days each, at about the same time. */
const { lanes } = aBoard({
  part: [aPart({ steps: [aFurtherStep('outside', { days: 2 })] })],
  machine: [aBrake(), aShear(), aBench({ id: 'O1', name: 'Coater', stage: 'outside' })],
  queue: [],
});
const lane = lanes.find(({ machine }) => machine.id === 'O1')!;
const geometry = geometryOf(600, lanes.length);

describe('the lane of an outside shop', () => {
  it('stands where the work flows, its bars on levels that share the height, none over another', () => {
    expect(lanes.map(({ machine }) => machine.id)).toEqual(['S1', 'B1', 'O1']);
    expect(lane.bars.map(({ level, levels }) => [level, levels])).toEqual([
      [0, 3],
      [1, 3],
      [2, 3],
    ]);
    const boxes = lane.bars.map((bar) => barBox(geometry, bar));
    expect(boxes[1]!.y).toBe(boxes[0]!.y + boxes[0]!.height);
    expect(boxes[2]!.y + boxes[2]!.height).toBeCloseTo(geometry.barY + geometry.barHeight);
    expect(lane.runs).toEqual([]);
  });

  it('gives the bar under the pointer by its level', () => {
    const scale = fitted(at('2026-11-30', '06:00'), at('2026-12-05', '06:00'), 1200);
    const together = Math.max(...lane.bars.map((bar) => bar.start)) + 600;
    const found = lane.bars.map((bar) => {
      const { y, height } = barBox(geometry, bar);
      const top = lanes.indexOf(lane) * geometry.laneHeight;
      return barAt(lanes, geometry, scale, xOf(scale, together), top + y + height / 2)?.operation;
    });
    expect(found).toEqual(lane.bars.map((bar) => bar.operation));
  });

  it('finds all bars in sight, whichever ends first', () => {
    const shorter = lane.bars.map((bar, k) => (k === 1 ? { ...bar, end: bar.start + 60 } : bar));
    const [first] = shorter;
    const seen = barsIn({ bars: shorter }, first!.end - 60, first!.end);
    expect(seen.map((bar) => bar.operation)).toEqual([shorter[0]!.operation, shorter[2]!.operation]);
  });
});
