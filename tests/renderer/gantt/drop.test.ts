import { describe, expect, it } from 'vitest';
import { dropAt } from '../../../renderer/gantt/block-moves.ts';
import { besideInLane, besideInNextLane, findBar } from '../../../renderer/gantt/drop.ts';
import { aRecord, at } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

describe('where a bar goes when it is let go', () => {
  const { lanes } = aBoard();
  const shear = lanes[0]!;

  it('is before the first other operation whose middle is later', () => {
    const second = barOf(lanes, '1042/2:shear');
    const middle = (second.start + second.end) / 2;
    expect(dropAt(shear, ['1042/3:shear'], middle - 1)).toMatchObject({ machineId: 'S1', position: 1 });
    expect(dropAt(shear, ['1042/3:shear'], middle + 1)).toMatchObject({ machineId: 'S1', position: 2 });
    expect(dropAt(shear, ['1042/3:shear'], 0)).toMatchObject({ machineId: 'S1', position: 0 });
  });

  it('is its own place when it is let go where it was', () => {
    for (const bar of shear.bars) {
      expect(dropAt(shear, [bar.operation], (bar.start + bar.end) / 2).position).toBe(bar.position);
    }
  });

  it('is behind everything that has begun', () => {
    const started = aRecord({ id: '1042/1:shear', start: at('2026-11-30', '05:00'), end: null });
    const board = aBoard({ record: [started] });
    expect(barOf(board.lanes, '1042/1:shear').started).toBe(true);
    expect(dropAt(board.lanes[0]!, ['1042/3:shear'], 0)).toMatchObject({ machineId: 'S1', position: 1 });
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
