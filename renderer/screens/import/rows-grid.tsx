import { memo, useEffect, useId, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Reading, RowReading } from '../../../core/import/reading.ts';
import { classes } from '../../ui/classes.ts';
import { Tag, type TagLook } from '../../ui/tag.tsx';
import { useScroll } from '../../ui/use-scroll.ts';
import { moveCell } from '../orders/grid-keys.ts';
import styles from './import.module.css';
import { RowCell } from './row-cell.tsx';
import { columnWidths, fieldsOf, reasonsOf, rowAt, rowTops, STATES } from './rows-view.ts';

/** What can be done with the row that the keyboard is on. */
export interface RowActs {
  readonly fix: (row: number, field: string, text: string) => void;
  readonly leaveOut: (row: RowReading) => void;
  readonly accept: (row: RowReading) => void;
}

interface Props extends RowActs {
  reading: Reading;
  rows: readonly RowReading[];
  /** The row that the keyboard is on, by its place among those shown. */
  at: number;
  onGo: (at: number) => void;
}

const LOOK: Readonly<Record<RowReading['state'], TagLook>> = {
  wrong: 'late',
  waiting: 'warn',
  changed: 'accent',
  new: 'fine',
  known: 'plain',
};
const stateWords = new Map(STATES);
/** As in import.module.css. */
const HEAD_HEIGHT = 42;

/** Every row as it was read, its reasons beneath; only those in sight are drawn, so that thousands scroll as lightly as ten. */
export function RowsGrid({ reading, rows, at, onGo, ...acts }: Props) {
  const { scroller, top, height, width, show } = useScroll(HEAD_HEIGHT);
  const fields = useMemo(() => fieldsOf(reading.rows), [reading]);
  const tops = useMemo(() => rowTops(rows), [rows]);
  const tracks = useMemo(
    () =>
      `92px 104px ${columnWidths(fields, reading)
        .map((width) => `minmax(calc(${width}ch + 18px), ${width}fr)`)
        .join(' ')}`,
    [fields, reading],
  );
  const { grid, column, editing, keys, pick, done } = useCells({
    rows,
    fields,
    at,
    onGo,
    acts,
    show: (row) => show(tops[row]!, tops[row + 1]!),
  });
  const id = useId();
  const first = Math.max(0, rowAt(tops, top) - 4);
  const end = Math.min(rows.length, rowAt(tops, top + height) + 5);
  return (
    <div className={styles.scroller} ref={scroller}>
      <div
        role="grid"
        aria-label="Rows of the file"
        aria-rowcount={rows.length + 1}
        aria-colcount={fields.length + 2}
        aria-activedescendant={rows[at] ? `${id}-${rows[at].row}-${column}` : undefined}
        className={styles.grid}
        tabIndex={0}
        ref={grid}
        onKeyDown={keys}
      >
        <Heads fields={fields} tracks={tracks} reading={reading} />
        <div role="rowgroup" style={{ height: tops.at(-1), position: 'relative' }}>
          {rows.slice(first, end).map((row, i) => (
            <GridRow
              key={row.row}
              id={id}
              row={row}
              at={first + i}
              top={tops[first + i]!}
              viewWidth={width}
              activeColumn={first + i === at ? column : null}
              editing={first + i === at && editing}
              {...{ fields, tracks }}
              onPick={pick}
              onDone={done}
            />
          ))}
        </div>
      </div>
    </div>
  );
}

interface CellsAsked {
  readonly rows: readonly RowReading[];
  readonly fields: readonly string[];
  readonly at: number;
  readonly onGo: (at: number) => void;
  readonly acts: RowActs;
  readonly show: (row: number) => void;
}

/** Row number and state stand before the fields. */
const BEFORE = 2;

/** Which cell the keyboard is on, and whether it is typed in. */
function useCells({ rows, fields, at, onGo, acts, show }: CellsAsked) {
  const grid = useRef<HTMLDivElement>(null);
  const [chosen, setColumn] = useState(BEFORE);
  const column = Math.min(chosen, fields.length + BEFORE - 1);
  const [editing, setEditing] = useState(false);
  const row = rows[at];
  // A row that is right now has left its place: the next wrong one stands there, and its first wrong cell is meant.
  const fixed = useRef(false);
  useEffect(() => {
    const bad = row?.cells.find(({ issue }) => issue !== undefined)?.field;
    if (fixed.current && bad !== undefined) setColumn(fields.indexOf(bad) + BEFORE);
    fixed.current = false;
  }, [rows, row, fields]);
  const pick = (place: number, nextColumn: number, edit: boolean): void => {
    onGo(place);
    setColumn(nextColumn);
    setEditing(edit && nextColumn >= BEFORE);
  };
  const done = (text: string | null): void => {
    setEditing(false);
    const field = fields[column - BEFORE];
    if (text !== null && row && field !== undefined) {
      fixed.current = true;
      acts.fix(row.row, field, text);
    }
    grid.current?.focus();
  };
  const keys = (event: KeyboardEvent): void => {
    if (event.altKey || event.metaKey || event.target !== event.currentTarget) return;
    const size = { rows: rows.length, columns: fields.length + BEFORE, page: 10 };
    const to = moveCell({ row: at, column }, event.key, event.ctrlKey, size);
    if (to) {
      pick(to.row, to.column, false);
      show(to.row);
    } else if ((event.key === 'Enter' || event.key === 'F2') && row && column >= BEFORE) setEditing(true);
    else if (event.key === 'Delete' && row) acts.leaveOut(row);
    else if (event.key === ' ' && row) acts.accept(row);
    else return;
    event.preventDefault();
  };
  return { grid, column, editing, pick, done, keys };
}

function Heads({
  fields,
  tracks,
  reading: { columns },
}: {
  fields: readonly string[];
  tracks: string;
  reading: Reading;
}) {
  return (
    <div role="rowgroup" className={styles.heads}>
      <div role="row" aria-rowindex={1} className={styles.row} style={{ gridTemplateColumns: tracks }}>
        <span role="columnheader" className={styles.head}>
          Row
        </span>
        <span role="columnheader" className={styles.head}>
          State
        </span>
        {fields.map((field) => (
          <span key={field} role="columnheader" className={styles.head}>
            <strong>{field}</strong>
            <small>{columns.find((column) => column.field === field)?.title}</small>
          </span>
        ))}
      </div>
    </div>
  );
}

interface RowProps {
  id: string;
  row: RowReading;
  at: number;
  top: number;
  viewWidth: number;
  fields: readonly string[];
  tracks: string;
  activeColumn: number | null;
  editing: boolean;
  onPick: (at: number, column: number, edit: boolean) => void;
  onDone: (text: string | null) => void;
}

const GridRow = memo(function GridRow(props: RowProps) {
  const { id, row, at, top, viewWidth, fields, tracks, activeColumn, editing, onPick, onDone } = props;
  const reasons = reasonsOf(row);
  const reasonsId = `${id}-${row.row}-reasons`;
  const cell = (column: number) => ({
    id: `${id}-${row.row}-${column}`,
    role: 'gridcell',
    onClick: () => onPick(at, column, false),
    className: classes(styles.cell, activeColumn === column && styles.active),
  });
  return (
    <div
      role="row"
      aria-rowindex={at + 2}
      aria-selected={activeColumn !== null}
      aria-describedby={reasons.length > 0 ? reasonsId : undefined}
      className={classes(styles.bodyRow, activeColumn !== null && styles.chosen)}
      style={{ transform: `translateY(${top}px)` }}
    >
      <div className={styles.row} role="presentation" style={{ gridTemplateColumns: tracks }}>
        <div {...cell(0)}>{row.row}</div>
        <div {...cell(1)}>
          <Tag look={LOOK[row.state]}>{stateWords.get(row.state)}</Tag>
        </div>
        {fields.map((field, i) => (
          <RowCell
            key={field}
            {...cell(i + BEFORE)}
            field={field}
            row={row}
            reasonsId={reasonsId}
            editing={editing && activeColumn === i + BEFORE}
            onPick={(edit) => onPick(at, i + BEFORE, edit)}
            onDone={onDone}
          />
        ))}
      </div>
      {reasons.length > 0 && (
        <div
          id={reasonsId}
          role="presentation"
          className={classes(styles.reasons, row.state !== 'wrong' && styles.soft)}
          style={{ width: viewWidth }}
        >
          {reasons.map((reason) => (
            <p key={reason} title={reason}>
              {reason}
            </p>
          ))}
        </div>
      )}
    </div>
  );
}, sameRow);

/** The handlers differ at each drawing but do the same; what a row shows is in the other properties. */
function sameRow(a: RowProps, b: RowProps): boolean {
  return (
    a.activeColumn === null &&
    b.activeColumn === null &&
    a.row === b.row &&
    a.at === b.at &&
    a.top === b.top &&
    a.viewWidth === b.viewWidth &&
    a.tracks === b.tracks
  );
}
