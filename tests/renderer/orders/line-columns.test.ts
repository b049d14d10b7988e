import { describe, expect, it } from 'vitest';
import { columnsThatFit, leastWidth, lineColumns } from '../../../renderer/screens/orders/line-columns.tsx';

const ids = (width: number) => columnsThatFit(width).map(({ id }) => id);
/** What the frame, the margins and a scroll bar leave of a window. */
const tableOf = (window: number) => window - 141;

describe('columns of the orders table', () => {
  it('shows all where there is room', () => {
    expect(columnsThatFit(leastWidth(lineColumns))).toEqual(lineColumns);
  });

  it('gives up the last roomy column first', () => {
    expect(columnsThatFit(leastWidth(lineColumns) - 1)).toEqual(lineColumns.slice(0, -1));
  });

  it('has a column for customer, part, metal, lateness and chance at 1440 px', () => {
    expect(ids(tableOf(1440))).toEqual(
      expect.arrayContaining(['customer', 'part', 'metal', 'due', 'lateness', 'end', 'chance', 'status']),
    );
  });

  it('puts the part under the customer at 1024 px, and keeps due date, lateness, end and chance', () => {
    const columns = columnsThatFit(tableOf(1024));
    expect(columns.find(({ id }) => id === 'customer')?.label).toBe('Customer, part');
    expect(ids(tableOf(1024))).toEqual([
      'line',
      'customer',
      'quantity',
      'metal',
      'due',
      'lateness',
      'end',
      'chance',
    ]);
  });

  it.each([900, 1024, 1280, 1440, 1920])('scrolls nothing sideways in a window of %i px', (window) => {
    expect(leastWidth(columnsThatFit(tableOf(window)))).toBeLessThanOrEqual(tableOf(window));
  });

  it('never gives up what tells a line from another, nor its lateness, however narrow', () => {
    expect(ids(0)).toEqual(['line', 'customer', 'quantity', 'metal', 'due', 'lateness']);
  });
});
