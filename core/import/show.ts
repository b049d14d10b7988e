import type { GridRow } from './grid.ts';
import { textAt } from './grid.ts';
import type { Judged, RowIssue } from './kind.ts';
import type { ColumnUse } from './propose.ts';
import type { ReadRow } from './read-rows.ts';
import {
  rowState,
  type CellReading,
  type ColumnReading,
  type Reading,
  type RowReading,
  type RowState,
} from './reading.ts';
import type { SettledStyle } from './style.ts';

/** So many cells show what a column holds. */
const EXAMPLES = 3;

/** How each column is read; those with neither heading nor cells are nobody's business. */
export function columnsShown(
  uses: readonly ColumnUse[],
  settled: ReadonlyMap<string, SettledStyle>,
  rows: readonly GridRow[],
): ColumnReading[] {
  return uses.flatMap(({ column, title, heading, field, by, toNote }): ColumnReading[] => {
    const examples: string[] = [];
    for (const { cells } of rows) {
      const text = textAt(cells, column);
      if (text !== '' && examples.push(text.slice(0, 60)) === EXAMPLES) break;
    }
    if (examples.length === 0 && /^column \d+$/.test(heading.name) && field === null) return [];
    const own = field ? settled.get(field.name) : undefined;
    return [
      {
        title,
        field: field?.name ?? null,
        toNote,
        by,
        unit: own?.unitFrom ? own.style.unit : null,
        unitFrom: own?.unitFrom ?? null,
        decimals: own?.style.decimals ?? null,
        dates: own?.style.dates ?? null,
        examples,
      },
    ];
  });
}

interface Showing {
  readonly accepted: ReadonlySet<number>;
  /** A question about columns is open: no row can be judged. */
  readonly waitAll: boolean;
}

/** The rows as they were read and judged, wrong ones first. */
export function rowsShown(
  read: readonly ReadRow[],
  judged: Judged,
  showing: Showing,
): Pick<Reading, 'rows' | 'counts'> {
  const issues = new Map<number, RowIssue[]>();
  for (const issue of judged.issues)
    if (!(issue.acceptable && showing.accepted.has(issue.row)))
      issues.set(issue.row, [...(issues.get(issue.row) ?? []), issue]);
  const rows = read.map((row) => shown(row, issues.get(row.row) ?? [], judged, showing.waitAll));
  const byState = (state: RowState) => rows.filter((row) => row.state === state);
  const counts = Object.fromEntries(rowState.options.map((state) => [state, byState(state).length]));
  return { rows: rowState.options.flatMap(byState), counts: counts as Reading['counts'] };
}

function shown(row: ReadRow, issues: readonly RowIssue[], { rows }: Judged, waitAll: boolean): RowReading {
  const own = rows.get(row.row);
  const fields = new Set(row.cells.map(({ field }) => field));
  const cells = row.cells.map((cell) => cellShown(cell, issues, own?.was[cell.field]));
  const lost = issues.filter(({ field }) => field === null || !fields.has(field)).map(({ reason }) => reason);
  const isWrong = row.wrong !== '' || issues.length > 0 || cells.some(({ issue }) => issue !== undefined);
  const state: RowState = isWrong ? 'wrong' : waitAll || row.waits ? 'waiting' : (own?.state ?? 'wrong');
  return {
    row: row.row,
    state,
    subject: own?.subject ?? '',
    words: [row.wrong, ...lost, own?.words ?? ''].filter((text) => text !== '').join(' '),
    cells,
  };
}

function cellShown(cell: CellReading, issues: readonly RowIssue[], was: string | undefined): CellReading {
  const own = issues.filter(({ field }) => field === cell.field);
  if (own.length === 0) return was === undefined ? cell : { ...cell, was };
  return {
    ...cell,
    issue: own.map(({ reason }) => reason).join(' '),
    ...(own.every(({ acceptable }) => acceptable) ? { acceptable: true as const } : {}),
  };
}
