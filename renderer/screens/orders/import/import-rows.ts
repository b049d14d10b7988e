import type { CellIssue, FileCheck } from '../../../../core/import/file-check.ts';

/** A row that cannot be taken yet: its cells, and what is wrong with which. */
export interface RowToFix {
  readonly row: number;
  readonly cells: readonly string[];
  /** Reasons by column title; '' for the row as a whole. */
  readonly reasons: Readonly<Record<string, string>>;
}

/** The rows with problems, in file order. A reason whose column is not in the file stands at ''. */
export function rowsToFix({
  header,
  rows,
  issues,
}: Pick<FileCheck, 'header' | 'rows' | 'issues'>): RowToFix[] {
  const byRow = new Map<number, CellIssue[]>();
  for (const problem of issues) byRow.set(problem.row, [...(byRow.get(problem.row) ?? []), problem]);
  return rows.flatMap(({ row, cells }) => {
    const found = byRow.get(row);
    if (!found) return [];
    const reasons: Record<string, string> = {};
    for (const { column, reason } of found) {
      const key = header.includes(column) ? column : '';
      reasons[key] = reasons[key] === undefined ? reason : `${reasons[key]} ${reason}`;
    }
    return [{ row, cells, reasons }];
  });
}

type Rows = FileCheck['rows'];

/** The rows with one cell typed again; shorter rows are filled up to it. */
export const withCell = (rows: Rows, row: number, column: number, text: string): Rows =>
  rows.map((one) => {
    if (one.row !== row) return one;
    const cells = Array.from(
      { length: Math.max(one.cells.length, column + 1) },
      (_, i) => one.cells[i] ?? '',
    );
    cells[column] = text;
    return { ...one, cells };
  });

export const withoutRow = (rows: Rows, row: number): Rows => rows.filter((one) => one.row !== row);

const NARROWEST = 4;
const WIDEST = 22;

/** Characters that fit into each column: as many as its longest cell or title has, within reason. */
export const columnWidths = (header: readonly string[], rows: readonly Pick<RowToFix, 'cells'>[]): number[] =>
  header.map((title, i) => {
    const longest = rows.reduce((most, { cells }) => Math.max(most, cells[i]?.length ?? 0), title.length);
    return Math.min(WIDEST, Math.max(NARROWEST, longest));
  });
