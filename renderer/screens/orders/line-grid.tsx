import { ArrowDown, ArrowUp } from 'lucide-react';
import { memo, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Shop } from '../../../core/shop/state.ts';
import { classes } from '../../ui/classes.ts';
import { useScroll } from '../../ui/use-scroll.ts';
import { CellEditor } from './cell-editor.tsx';
import { moveCell } from './grid-keys.ts';
import { columnsThatFit, leastWidth, type LineColumn, type Writing } from './line-columns.tsx';
import type { LineRow } from './line-rows.ts';
import { useOrdersView } from './orders-view.ts';
import styles from './orders.module.css';
import { windowOf } from './window-of.ts';

/** As in orders.module.css. */
const ROW_HEIGHT = 46;
const tracksOf = (columns: readonly LineColumn[]) =>
  columns.map(({ least, grow }) => (grow ? `minmax(${least}px, ${grow}fr)` : `${least}px`)).join(' ');
const cellId = (row: string, column: number) => `cell-${row}-${column}`;

interface Props {
  shop: Shop;
  /** Filtered and sorted. */
  rows: readonly LineRow[];
  onOpen: (row: LineRow) => void;
}

/** The lines as a grid of cells; only the rows in sight are drawn, so that thousands scroll as lightly as ten. */
export function LineGrid({ shop, rows, onOpen }: Props) {
  const { scroller, top, height, width, show } = useScroll(ROW_HEIGHT);
  const body = useRef<HTMLDivElement>(null);
  const columns = useMemo(() => columnsThatFit(width || Infinity), [width]);
  const { active, column, editing, go, keys, edit } = useCells(rows, columns, onOpen, height, (row) =>
    show(row * ROW_HEIGHT, (row + 1) * ROW_HEIGHT),
  );
  const { first, end } = windowOf(top, height, ROW_HEIGHT, rows.length);
  const done = () => {
    edit(null);
    body.current?.focus();
  };
  const writing: Writing = shop.settings;
  return (
    <div className={styles.scroller} ref={scroller}>
      <div
        role="grid"
        aria-label="Lines of work orders"
        aria-rowcount={rows.length + 1}
        aria-colcount={columns.length}
        aria-activedescendant={active ? cellId(active.id, column) : undefined}
        className={styles.grid}
        style={{ minWidth: leastWidth(columns) }}
        tabIndex={0}
        ref={body}
        onKeyDown={keys}
      >
        <HeadRow columns={columns} />
        <div role="rowgroup" style={{ height: rows.length * ROW_HEIGHT, position: 'relative' }}>
          {rows.slice(first, end).map((row, i) => (
            <GridRow
              key={row.id}
              row={row}
              at={first + i}
              activeColumn={row.id === active?.id ? column : null}
              editing={editing === row.id}
              {...{ columns, shop, writing, done, go, onOpen }}
              onEdit={edit}
            />
          ))}
        </div>
      </div>
    </div>
  );
}

/** Which cell the keyboard is on, and which one is being typed in. */
function useCells(
  rows: readonly LineRow[],
  columns: readonly LineColumn[],
  onOpen: (row: LineRow) => void,
  viewHeight: number,
  show: (at: number) => void,
) {
  const { lineId, choose } = useOrdersView();
  const [chosen, setColumn] = useState(0);
  const column = Math.min(chosen, columns.length - 1);
  const [editing, edit] = useState<string | null>(null);
  const at = rows.findIndex((row) => row.id === lineId);
  const active = rows[at];
  const go = (row: LineRow | undefined, place: number, nextColumn: number) => {
    choose(row?.id ?? null);
    setColumn(nextColumn);
    show(place);
  };
  const enter = () => {
    if (!active) return;
    if (columns[column]?.edits) edit(active.id);
    else onOpen(active);
  };
  const keys = (event: KeyboardEvent) => {
    const page = Math.max(1, Math.floor(viewHeight / ROW_HEIGHT) - 1);
    const size = { rows: rows.length, columns: columns.length, page };
    const skip = event.altKey || event.metaKey || event.target !== event.currentTarget;
    const to = skip ? null : moveCell({ row: at, column }, event.key, event.ctrlKey, size);
    if (to) go(rows[to.row], to.row, to.column);
    else if (!skip && (event.key === 'Enter' || event.key === 'F2')) enter();
    else return;
    event.preventDefault();
  };
  return { active, column, editing, go, keys, edit };
}

function HeadRow({ columns }: { columns: readonly LineColumn[] }) {
  const { sort, sortBy } = useOrdersView();
  return (
    <div
      role="row"
      aria-rowindex={1}
      className={classes(styles.row, styles.headRow)}
      style={{ gridTemplateColumns: tracksOf(columns) }}
    >
      {columns.map(({ id, label, right }) => {
        const sorted = sort.column === id;
        const order = sorted ? (sort.descending ? 'descending' : 'ascending') : 'none';
        return (
          <button
            key={id}
            type="button"
            role="columnheader"
            aria-sort={order}
            className={classes(styles.head, right && styles.right)}
            onClick={() => sortBy(id)}
          >
            {label}
            {sorted &&
              (sort.descending ? <ArrowDown size={12} aria-hidden /> : <ArrowUp size={12} aria-hidden />)}
          </button>
        );
      })}
    </div>
  );
}

interface RowProps {
  row: LineRow;
  at: number;
  /** The column the keyboard is on, in this row. */
  activeColumn: number | null;
  editing: boolean;
  columns: readonly LineColumn[];
  shop: Shop;
  writing: Writing;
  done: () => void;
  go: (row: LineRow, at: number, column: number) => void;
  onOpen: (row: LineRow) => void;
  onEdit: (lineId: string) => void;
}

const GridRow = memo(function GridRow({
  row,
  at,
  activeColumn,
  editing,
  columns,
  shop,
  writing,
  done,
  go,
  onOpen,
  onEdit,
}: RowProps) {
  return (
    <div
      role="row"
      aria-rowindex={at + 2}
      aria-selected={activeColumn !== null}
      className={classes(styles.row, styles.bodyRow, activeColumn !== null && styles.chosen)}
      style={{ gridTemplateColumns: tracksOf(columns), transform: `translateY(${at * ROW_HEIGHT}px)` }}
    >
      {columns.map((column, i) => (
        <div
          key={column.id}
          id={cellId(row.id, i)}
          role="gridcell"
          className={classes(
            styles.cell,
            column.right && styles.right,
            activeColumn === i && styles.active,
            column.edits && styles.editable,
          )}
          onClick={() => go(row, at, i)}
          onDoubleClick={() => (column.edits ? onEdit(row.id) : onOpen(row))}
        >
          {editing && activeColumn === i && column.edits ? (
            <CellEditor shop={shop} row={row} what={column.edits} onDone={done} />
          ) : (
            column.cell(row, writing)
          )}
        </div>
      ))}
    </div>
  );
}, sameRow);

/** The handlers differ at each drawing but do the same; what a row shows is in the other properties. */
function sameRow(a: RowProps, b: RowProps): boolean {
  return (
    a.row === b.row &&
    a.at === b.at &&
    a.activeColumn === b.activeColumn &&
    a.editing === b.editing &&
    a.columns === b.columns &&
    a.shop === b.shop
  );
}
