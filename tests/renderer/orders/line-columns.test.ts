import { describe, expect, it } from 'vitest';
import { columnsThatFit, leastWidth, lineColumns } from '../../../renderer/screens/orders/line-columns.tsx';

const ids = (width: number) => columnsThatFit(width).map(({ id }) => id);

describe('columns of the orders table', () => {
  it('shows all where there is room', () => {
    expect(columnsThatFit(leastWidth(lineColumns))).toEqual(lineColumns);
  });

  it('gives up the last column first', () => {
    expect(columnsThatFit(leastWidth(lineColumns) - 1)).toEqual(lineColumns.slice(0, -1));
  });

  it('keeps due date, end, lateness and chance within a window of 1024 px (883 px for the table)', () => {
    expect(ids(883)).toEqual(expect.arrayContaining(['due', 'end', 'lateness', 'chance']));
    expect(leastWidth(columnsThatFit(883))).toBeLessThanOrEqual(883);
  });

  it('never gives up what tells a line from another, however narrow', () => {
    expect(ids(0)).toEqual(ids(883));
  });
});
