import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideInLane, besideInNextLane, dropAt, findBar, withMove } from '../../../renderer/gantt/drop.ts';
import { aRecord, at } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

describe('where a bar goes when it is let go', () => {
  const { lanes } = aBoard();
  const shear = lanes[0]!;

  it('is before the first other operation whose middle is later', () => {
    const second = barOf(lanes, '1042/2:shear');
    const middle = (second.start + second.end) / 2;
    expect(dropAt(shear, '1042/3:shear', middle - 1)).toEqual({ machineId: 'S1', position: 1 });
    expect(dropAt(shear, '1042/3:shear', middle + 1)).toEqual({ machineId: 'S1', position: 2 });
    expect(dropAt(shear, '1042/3:shear', 0)).toEqual({ machineId: 'S1', position: 0 });
  });

  it('is its own place when it is let go where it was', () => {
    for (const bar of shear.bars) {
      expect(dropAt(shear, bar.operation, (bar.start + bar.end) / 2).position).toBe(bar.position);
    }
  });

  it('is behind everything that has begun', () => {
    const started = aRecord({ id: '1042/1:shear', start: at('2026-11-30', '05:00'), end: null });
    const board = aBoard({ record: [started] });
    expect(barOf(board.lanes, '1042/1:shear').started).toBe(true);
    expect(dropAt(board.lanes[0]!, '1042/3:shear', 0)).toEqual({ machineId: 'S1', position: 1 });
  });

  it('changes nothing but the two queues: every operation stays in exactly one place', () => {
    const queues = { A: ['a', 'b', 'c'], B: ['d', 'e'], C: [] };
    fc.assert(
      fc.property(
        fc.constantFrom('a', 'b', 'c', 'd', 'e'),
        fc.constantFrom('A', 'B', 'C'),
        fc.nat(3),
        (operation, machineId, position) => {
          const moved = withMove(queues, operation, { machineId, position });
          expect(Object.values(moved).flat().sort()).toEqual(['a', 'b', 'c', 'd', 'e']);
          const others = moved[machineId]!.filter((other) => other !== operation);
          expect(moved[machineId]!.indexOf(operation)).toBe(Math.min(position, others.length));
        },
      ),
    );
  });

  it('is the same plan when the place does not change', () => {
    const queues = { A: ['a', 'b'] };
    expect(withMove(queues, 'b', { machineId: 'A', position: 1 })).toBe(queues);
  });
});

describe('going from bar to bar', () => {
  const { lanes } = aBoard();

  it('steps along the lane and stops at its ends', () => {
    expect(besideInLane(lanes, '1042/1:shear', 1)).toBe('1042/2:shear');
    expect(besideInLane(lanes, '1042/1:shear', -1)).toBe('1042/1:shear');
    expect(besideInLane(lanes, '1042/3:shear', 1)).toBe('1042/3:shear');
  });

  it('goes to the nearest in time in the lane above or below', () => {
    expect(besideInNextLane(lanes, '1042/2:brake', -1)).toBe('1042/1:brake');
    expect(besideInNextLane(lanes, '1042/1:shear', 1)).toBe('1042/1:brake');
    expect(besideInNextLane(lanes, '1042/1:shear', -1)).toBe('1042/1:shear');
  });

  it('finds a bar with its lane, and nothing for one that has left the board', () => {
    expect(findBar(lanes, '1042/2:brake')?.lane).toBe(2);
    expect(findBar(lanes, '9999/1:shear')).toBeNull();
    expect(findBar(lanes, null)).toBeNull();
  });
});
