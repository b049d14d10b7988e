import { describe, expect, it } from 'vitest';
import { dropAt } from '../../../renderer/gantt/block-moves.ts';
import { flat, foldLanes, foldOf, shutTogether } from '../../../renderer/gantt/fold.ts';
import { geometryOf } from '../../../renderer/gantt/geometry.ts';
import { barAt } from '../../../renderer/gantt/hit-test.ts';
import { horizonOf } from '../../../renderer/gantt/lanes.ts';
import { fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { aBoard } from './a-board.ts';

const H = 3600;
/** Closed from 10 to 20 o'clock and from 30 to 50 o'clock; at rest for half an hour at 25. */
const fold = foldOf([
  { start: 10 * H, end: 20 * H },
  { start: 25 * H, end: 25.5 * H },
  { start: 30 * H, end: 50 * H },
]);

describe('closed time folded away', () => {
  it('leaves open time as long as it is and makes one moment of a closed stretch', () => {
    expect([9, 10, 15, 20, 21].map((hour) => fold.at(hour * H) / H)).toEqual([9, 10, 10, 10, 11]);
    expect([30, 40, 50, 51].map((hour) => fold.at(hour * H) / H)).toEqual([20, 20, 20, 21]);
  });

  it('keeps a rest of half an hour in sight', () => {
    expect(fold.at(26 * H) - fold.at(25 * H)).toBe(H);
    expect(fold.breaks).toEqual([
      { at: 10 * H, seconds: 10 * H },
      { at: 20 * H, seconds: 20 * H },
    ]);
  });

  it('comes back to the same instant from open time, to its end from a closed stretch', () => {
    for (let hour = 0; hour < 60; hour += 0.25) {
      const closed = (hour >= 10 && hour < 20) || (hour >= 30 && hour < 50);
      expect(fold.back(fold.at(hour * H)) / H).toBe(closed ? (hour < 20 ? 20 : 50) : hour);
    }
  });

  it('folds only hours in which no machine is open, and nothing where there are none', () => {
    const { plan, lanes } = aBoard();
    const together = shutTogether(plan, lanes, horizonOf(plan));
    expect(together.length).toBeGreaterThan(10);
    for (const { closed } of lanes)
      for (const { start, end } of together)
        expect(closed.some((own) => own.start <= start && end <= own.end)).toBe(true);
    expect(foldOf([])).toBe(flat);
    expect(foldLanes(lanes, flat)).toBe(lanes);
  });
});

describe('hit-test and drop on a folded board', () => {
  const { plan, lanes } = aBoard();
  const own = foldOf(shutTogether(plan, lanes, horizonOf(plan)));
  const folded = foldLanes(lanes, own);
  const geometry = geometryOf(600, lanes.length);
  const all = folded.flatMap((lane) => lane.bars);
  const scale = fitted(all[0]!.start - H, Math.max(...all.map((bar) => bar.end)) + H, 1200);

  it('finds every bar under its middle', () => {
    folded.forEach((lane, i) => {
      for (const bar of lane.bars) {
        const [x, y] = [xOf(scale, (bar.start + bar.end) / 2), (i + 0.5) * geometry.laneHeight];
        expect(barAt(folded, geometry, scale, x, y)?.operation).toBe(bar.operation);
      }
    });
  });

  it('drops in the same place of the queue as on the flat one', () => {
    lanes.forEach((lane, i) => {
      for (const bar of lane.bars)
        for (const share of [0.1, 0.9]) {
          const at = bar.pieces[0]!.start + share * (bar.pieces[0]!.end - bar.pieces[0]!.start);
          const first = lane.bars[0]!.operation;
          expect(dropAt(folded[i]!, [first], own.at(at))).toEqual(dropAt(lane, [first], at));
        }
    });
  });
});
