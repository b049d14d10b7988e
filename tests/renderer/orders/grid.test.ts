import { describe, expect, it } from 'vitest';
import { moveCell } from '../../../renderer/screens/orders/grid-keys.ts';
import { windowOf } from '../../../renderer/screens/orders/window-of.ts';
import { scrollToShow } from '../../../renderer/ui/use-scroll.ts';

describe('the window on a long table', () => {
  it('draws the rows in sight and a few beyond, never all of two thousand', () => {
    const { first, end } = windowOf(36_000, 720, 36, 2000);
    expect(first).toBeLessThanOrEqual(1000);
    expect(end).toBeGreaterThanOrEqual(1020);
    expect(end - first).toBeLessThan(50);
  });

  it('shows rows of a short table even when it was scrolled further before', () => {
    expect(windowOf(36_000, 720, 36, 5)).toEqual({ first: 5, end: 5 });
    expect(windowOf(0, 720, 36, 5)).toEqual({ first: 0, end: 5 });
  });

  it('scrolls no further than it takes to see a row', () => {
    expect(scrollToShow(360, 396, 0, 720)).toBe(0);
    expect(scrollToShow(720, 756, 0, 720)).toBe(36);
    expect(scrollToShow(108, 144, 360, 720)).toBe(108);
  });
});

describe('keys in the table', () => {
  const size = { rows: 100, columns: 12, page: 20 };
  it('move by cell, by page and to the ends, and stop at the edges', () => {
    expect(moveCell({ row: 0, column: 0 }, 'ArrowDown', false, size)).toEqual({ row: 1, column: 0 });
    expect(moveCell({ row: 0, column: 0 }, 'ArrowUp', false, size)).toEqual({ row: 0, column: 0 });
    expect(moveCell({ row: 95, column: 3 }, 'PageDown', false, size)).toEqual({ row: 99, column: 3 });
    expect(moveCell({ row: 7, column: 3 }, 'End', false, size)).toEqual({ row: 7, column: 11 });
    expect(moveCell({ row: 7, column: 3 }, 'End', true, size)).toEqual({ row: 99, column: 11 });
  });

  it('begin at the first row when none is chosen yet', () => {
    expect(moveCell({ row: -1, column: 0 }, 'ArrowDown', false, size)).toEqual({ row: 0, column: 0 });
  });

  it('leave other keys alone', () => {
    expect(moveCell({ row: 0, column: 0 }, 'x', false, size)).toBeNull();
  });
});
