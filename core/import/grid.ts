/** A file as it was read: cells in the file's own order, whatever they mean. */

/** What stands in a cell. A spreadsheet knows which cells are numbers: those are exact, whatever marks they show. */
export interface Cell {
  readonly text: string;
  readonly number?: number;
}

export interface GridRow {
  /** As counted in the file, from 1. */
  readonly row: number;
  readonly cells: readonly Cell[];
}

export interface Grid {
  /** Rows that hold something; blank ones are left out, and counted by the numbers of the others. */
  readonly rows: readonly GridRow[];
  /** What was noticed on the way: encoding, separator. Whole sentences. */
  readonly notes: readonly string[];
  /** The sheets of a spreadsheet, the one that was read first; none of a text file. */
  readonly sheets: readonly string[];
}

export const EMPTY: Cell = { text: '' };

export const textAt = (cells: readonly Cell[], column: number): string => cells[column]?.text ?? '';
