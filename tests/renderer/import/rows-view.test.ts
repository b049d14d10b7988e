import { describe, expect, it } from 'vitest';
import type { RowReading } from '../../../core/import/reading.ts';
import {
  columnWidths,
  fieldsOf,
  reasonsOf,
  rowAt,
  rowTops,
  underCell,
} from '../../../renderer/screens/import/rows-view.ts';

const aRow = (row: number, own: Partial<RowReading> = {}): RowReading => ({
  row,
  state: 'new',
  subject: '',
  words: '',
  cells: [
    { field: 'order', text: '1', read: '1' },
    { field: 'quantity', text: '5', read: '5' },
  ],
  ...own,
});
const wrong = aRow(7, {
  state: 'wrong',
  words: 'Too many cells.',
  cells: [{ field: 'quantity', text: '-5', read: '', issue: 'Below 1.' }],
});

describe('the rows of a file on screen', () => {
  it('tell what is wrong with them, the row as a whole first', () => {
    expect(reasonsOf(wrong)).toEqual(['Too many cells.', 'quantity: Below 1.']);
    expect(reasonsOf(aRow(2))).toEqual([]);
  });

  it('are as high as what is said of them; each height belongs to one row', () => {
    const tops = rowTops([wrong, aRow(2), aRow(3)]);
    expect(tops).toEqual([0, 84, 126, 168]);
    expect([0, 83, 84, 126, 167, 5000].map((height) => rowAt(tops, height))).toEqual([0, 0, 1, 2, 2, 2]);
    expect(rowAt(rowTops([]), 0)).toBe(0);
  });

  it('have columns as wide as their cells and titles, within reason', () => {
    const rows = [aRow(2, { cells: [{ field: 'note', text: 'x'.repeat(300), read: '' }] }), aRow(3)];
    expect(fieldsOf(rows)).toEqual(['note', 'order', 'quantity']);
    expect(columnWidths(fieldsOf(rows), { rows, columns: [] })).toEqual([24, 6, 8]);
  });

  it('show beneath a cell what it changes, else the file’s own text where it reads otherwise', () => {
    expect(underCell({ field: 'quantity', text: '30', read: '30', was: '20' })).toBe('was 20');
    expect(underCell({ field: 'note', text: 'x', read: 'x', was: '' })).toBe('was empty');
    expect(underCell({ field: 'length', text: '2,5', read: '2.5 m' })).toBe('2,5');
    expect(underCell({ field: 'order', text: '1', read: '1' })).toBe('');
  });
});
