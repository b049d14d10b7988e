import { describe, expect, it } from 'vitest';
import { firstWhere, horizonOf, near } from '../../../renderer/gantt/lanes.ts';
import { aLine, anOrder, aPin, at, NOW } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

describe('the lanes of the board', () => {
  it('are one a machine, the shear above the brakes', () => {
    expect(aBoard().lanes.map((lane) => lane.machine.id)).toEqual(['S1', 'B1', 'B2']);
  });

  it('show every operation once, in queue order, in its sheet’s own colour', () => {
    const { lanes } = aBoard();
    expect(lanes[0]!.bars.map((bar) => bar.operation)).toEqual([
      '1042/1:shear',
      '1042/2:shear',
      '1042/3:shear',
    ]);
    expect(lanes[0]!.bars.map((bar) => bar.hex)).toEqual(['#4a5d43', '#4a5d43', '#dfd5c2']);
    expect(lanes[0]!.bars.map((bar) => bar.position)).toEqual([0, 1, 2]);
  });

  it('have a line’s own due date, and say how late it is by it', () => {
    const due = at('2026-11-30', '07:30');
    const { lanes, plan } = aBoard({ line: [aLine({ due })] });
    const bar = barOf(lanes, '1042/1:brake');
    expect(bar).toMatchObject({ due, tardiness: plan.schedule.ends['1042/1']! - due });
    expect(lanes.find(({ machine }) => machine.id === 'B1')!.dues).toEqual([due]);
  });

  it('have a run as long as nothing has to be changed over', () => {
    const { lanes } = aBoard();
    expect(lanes[0]!.runs.map(({ count, title }) => [count, title])).toEqual([
      [2, '24 ga Moss green'],
      [1, '24 ga Bone'],
    ]);
  });

  it('break a bar where the machine is closed, so that its pieces add up to the work', () => {
    const long = aLine({ quantity: 900 });
    const { lanes, plan } = aBoard({ line: [long] });
    const bar = barOf(lanes, '1042/1:brake');
    const work = plan.operations.get('1042/1:brake')!.machines.find((m) => m.id === 'B1')!.seconds;
    expect(bar.pieces.length).toBeGreaterThan(1);
    expect(bar.pieces.reduce((sum, piece) => sum + piece.end - piece.start, 0)).toBe(work);
    expect(bar.pieces[0]!.start).toBe(bar.start);
    expect(bar.pieces.at(-1)!.end).toBe(bar.end);
  });

  it('shade the hours in which a machine is closed', () => {
    const { lanes } = aBoard();
    const closedAt = (instant: number) => near(lanes[0]!.closed, instant, instant + 1).length > 0;
    expect(closedAt(at('2026-11-30', '06:30'))).toBe(true);
    expect(closedAt(at('2026-11-30', '07:00'))).toBe(false);
    expect(closedAt(at('2026-11-30', '11:45'))).toBe(true);
    expect(closedAt(at('2026-12-06', '12:00'))).toBe(true);
  });

  it('mark what is late, pinned and last of its line', () => {
    const { lanes } = aBoard({
      order: [anOrder({ due: at('2026-11-27') })],
      pin: [aPin({ id: '1042/2:brake' })],
    });
    const bar = barOf(lanes, '1042/2:brake');
    expect(bar.tardiness).toBe(bar.end - at('2026-11-27'));
    expect([bar.pinned, bar.last]).toEqual([true, true]);
    expect(barOf(lanes, '1042/2:shear').last).toBe(false);
    expect(lanes[2]!.dues).toEqual([at('2026-11-27')]);
  });

  it('go as far as the last due date and a week beyond', () => {
    const { plan } = aBoard();
    const horizon = horizonOf(plan);
    expect(horizon.end).toBe(at('2026-12-04') + 7 * 86_400);
    expect(horizon.start).toBeLessThan(NOW);
  });
});

describe('looking up a stretch of time', () => {
  const items = [
    { start: 0, end: 10 },
    { start: 10, end: 20 },
    { start: 30, end: 40 },
  ];

  it('finds what touches it and nothing that only meets it', () => {
    expect(near(items, 10, 30)).toEqual([{ start: 10, end: 20 }]);
    expect(near(items, 19, 31)).toEqual(items.slice(1));
    expect(near(items, 40, 50)).toEqual([]);
  });

  it('finds the first item past a point, or the end', () => {
    expect(firstWhere(items, (item) => item.end > 20)).toBe(2);
    expect(firstWhere(items, (item) => item.end > 99)).toBe(3);
  });
});
