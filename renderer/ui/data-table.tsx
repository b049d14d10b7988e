import { ArrowDown, ArrowUp } from 'lucide-react';
import { useMemo, useState, type ReactNode } from 'react';
import { Cell, Column, Row, Table, TableBody, TableHeader, type SortDescriptor } from 'react-aria-components';
import { classes } from './classes.ts';
import styles from './data-table.module.css';
import { sortRows } from './sort-rows.ts';

export interface TableColumn<T> {
  id: string;
  label: string;
  /** What the cell shows. */
  cell: (row: T) => ReactNode;
  /** What the column sorts by; missing: it cannot be sorted. */
  sort?: (row: T) => string | number;
  /** Figures stand right. */
  right?: boolean;
  width?: number | string;
}

interface Props<T> {
  /** The accessible name. */
  label: string;
  columns: readonly TableColumn<T>[];
  rows: readonly T[];
  rowId: (row: T) => string;
  /** Enter or a click on a row. */
  onOpen?: (row: T) => void;
  selectedId?: string | null;
  sortedBy?: SortDescriptor;
  /** Drawn in place of rows. */
  empty?: ReactNode;
}

const heading = <T,>(column: TableColumn<T>, isRowHeader: boolean) => (
  <Column
    key={column.id}
    id={column.id}
    isRowHeader={isRowHeader}
    allowsSorting={column.sort !== undefined}
    className={classes(styles.column, column.right && styles.right)}
    style={column.width === undefined ? {} : { width: column.width }}
  >
    {({ sortDirection }) => (
      <span className={styles.heading}>
        {column.label}
        {sortDirection === 'ascending' && <ArrowUp size={12} aria-hidden />}
        {sortDirection === 'descending' && <ArrowDown size={12} aria-hidden />}
      </span>
    )}
  </Column>
);

/**
 * A table with sortable columns; arrow keys move through it, Enter opens a row. A row is drawn anew when it is another
 * object or the columns are: what stays should be kept by whoever gives them.
 */
export function DataTable<T extends object>({
  label,
  columns,
  rows,
  rowId,
  onOpen,
  selectedId = null,
  sortedBy,
  empty,
}: Props<T>) {
  const [by, setBy] = useState<SortDescriptor | undefined>(sortedBy);
  const sorted = useMemo(() => {
    const sort = by && columns.find((column) => column.id === by.column)?.sort;
    return sort ? sortRows(rows, sort, by.direction === 'descending', rowId) : rows;
  }, [rows, by, columns, rowId]);

  const headings = useMemo(() => columns.map((column, i) => heading(column, i === 0)), [columns]);
  const opens = onOpen !== undefined;

  return (
    <div className={styles.scroll}>
      <Table
        aria-label={label}
        className={styles.table ?? ''}
        {...(by ? { sortDescriptor: by } : {})}
        onSortChange={setBy}
        selectionMode={selectedId === null ? 'none' : 'single'}
        selectionBehavior="replace"
        selectedKeys={selectedId === null ? [] : [selectedId]}
        onRowAction={(key) => {
          const row = rows.find((one) => rowId(one) === key);
          if (row !== undefined) onOpen?.(row);
        }}
      >
        <TableHeader>{headings}</TableHeader>
        <TableBody
          items={sorted}
          dependencies={[columns, opens]}
          renderEmptyState={() => <div className={styles.empty}>{empty ?? 'Nothing here.'}</div>}
        >
          {(row) => (
            <Row id={rowId(row)} className={classes(styles.row, opens && styles.opens)}>
              {columns.map((column) => (
                <Cell key={column.id} className={classes(styles.cell, column.right && styles.right)}>
                  {column.cell(row)}
                </Cell>
              ))}
            </Row>
          )}
        </TableBody>
      </Table>
    </div>
  );
}
