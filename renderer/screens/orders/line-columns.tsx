import type { ReactNode } from 'react';
import { formatClock, formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatCutLength, type Units } from '../../../core/units/length.ts';
import { shortDuration } from '../../../core/units/duration.ts';
import { Swatch } from '../../ui/choice.tsx';
import { ChanceTag } from '../../ui/chance-tag.tsx';
import { classes } from '../../ui/classes.ts';
import { Tag, type TagLook } from '../../ui/tag.tsx';
import type { LineRow, Current } from './line-rows.ts';
import styles from './orders.module.css';

/** How the shop writes times and lengths. */
export interface Writing extends Units {
  readonly timeZone: string;
}

export type Editable = 'quantity' | 'due' | 'status';

export type ColumnId =
  | 'line'
  | 'customer'
  | 'part'
  | 'quantity'
  | 'metal'
  | 'length'
  | 'release'
  | 'due'
  | 'importance'
  | 'end'
  | 'lateness'
  | 'chance'
  | 'status';

export interface LineColumn {
  readonly id: ColumnId;
  readonly label: string;
  /** Least width in pixels. */
  readonly least: number;
  /** Its share of the width that is left over. */
  readonly grow?: number;
  /** Left out where the window is too narrow for all, the last one first. */
  readonly roomy?: true;
  readonly right?: boolean;
  /** What can be changed in place. */
  readonly edits?: Editable;
  readonly sort: (row: LineRow) => string | number;
  readonly cell: (row: LineRow, writing: Writing) => ReactNode;
}

/** "Fri 4 Dec 14:00", in two lines where the column is narrow. */
const wall = (at: number, { timeZone }: Writing, about = false): ReactNode => (
  <>
    <span className={styles.whole}>
      {about && '≈ '}
      {formatWallDate(instant(at), timeZone)}
    </span>{' '}
    <span className={styles.whole}>{formatClock(instant(at), timeZone)}</span>
  </>
);

const closedLook: Readonly<Record<Exclude<Current, 'open'>, TagLook>> = {
  held: 'warn',
  done: 'fine',
  cancelled: 'plain',
};

/** Words that stay in one line. */
const unbroken = (words: string): string => words.replaceAll(' ', '\u00a0');

function Lateness({ row }: { row: LineRow }) {
  if (row.trouble !== null) return <Tag look="warn">Cannot be planned</Tag>;
  if (row.lateness === null) return null;
  if (row.lateness > 0) return <Tag look="late">{`late ${unbroken(shortDuration(row.lateness))}`}</Tag>;
  return (
    <span className={styles.soft}>
      {row.lateness === 0 ? 'exactly on time' : `${unbroken(shortDuration(-row.lateness))} early`}
    </span>
  );
}

const Importance = ({ row: { order, terms } }: { row: LineRow }) => (
  <>
    {order.rush && <Tag look="accent">rush</Tag>} {terms.importance !== 1 && `×${terms.importance}`}
  </>
);

/** More letters than two lines of a narrow column hold; three smaller lines hold twice as many. */
const LONG = 26;

/** Words that are never cut: they wrap, and long ones are smaller. */
const Words = ({ text }: { text: string }) => (
  <span className={classes(styles.words, text.length > LONG && styles.long)}>{text}</span>
);

const partWords = ({ line, partName }: LineRow): string =>
  line.makeUpFor ? `${partName}, remake of ${line.makeUpFor}` : partName;

/** Sorts what has no value behind all that has one. */
const LAST = Number.MAX_SAFE_INTEGER;

export const lineColumns: readonly LineColumn[] = [
  { id: 'line', label: 'Line', least: 70, sort: (r) => r.id, cell: (r) => <strong>{r.id}</strong> },
  {
    id: 'customer',
    label: 'Customer',
    least: 118,
    grow: 1.3,
    sort: (r) => r.order.customer,
    cell: (r) => <Words text={r.order.customer} />,
  },
  {
    id: 'part',
    label: 'Part',
    least: 122,
    grow: 1.1,
    sort: (r) => r.partName,
    cell: (r) => <Words text={partWords(r)} />,
  },
  {
    id: 'quantity',
    label: 'Pieces',
    least: 60,
    right: true,
    edits: 'quantity',
    sort: (r) => r.line.quantity,
    cell: (r) => r.line.quantity,
  },
  {
    id: 'metal',
    label: 'Metal',
    least: 140,
    grow: 1.4,
    sort: (r) => r.metal,
    cell: (r) => (
      <span className={styles.stock}>
        <Swatch hex={r.hex} />
        <Words text={r.metal} />
      </span>
    ),
  },
  {
    id: 'due',
    label: 'Due',
    least: 92,
    edits: 'due',
    sort: (r) => r.terms.due,
    cell: (r, writing) => wall(r.terms.due, writing),
  },
  {
    id: 'lateness',
    label: 'Late or early',
    least: 122,
    sort: (r) => -(r.lateness ?? -LAST),
    cell: (r) => <Lateness row={r} />,
  },
  {
    id: 'end',
    label: 'Planned end',
    least: 112,
    roomy: true,
    sort: (r) => r.end ?? LAST,
    cell: (r, writing) =>
      r.end !== null && (
        <span
          className={r.notQueued ? styles.soft : ''}
          title={r.notQueued ? 'Not queued yet: behind all that is.' : ''}
        >
          {wall(r.end, writing, r.notQueued)}
        </span>
      ),
  },
  {
    id: 'chance',
    label: 'Chance on time',
    least: 104,
    roomy: true,
    sort: (r) => r.onTime ?? LAST,
    cell: (r) =>
      r.onTime !== null && (
        <span className={styles.whole}>
          <ChanceTag share={r.onTime} short />
        </span>
      ),
  },
  {
    id: 'status',
    label: 'Status',
    least: 96,
    roomy: true,
    edits: 'status',
    sort: (r) => `${r.current} ${r.progress}`,
    cell: (r) =>
      r.current === 'open' ? (
        <Words text={r.progress} />
      ) : (
        <Tag look={closedLook[r.current]}>{r.current}</Tag>
      ),
  },
  {
    id: 'length',
    label: 'Length',
    least: 84,
    roomy: true,
    right: true,
    sort: (r) => r.line.lengthMm,
    cell: (r, writing) => formatCutLength(r.line.lengthMm, writing),
  },
  {
    id: 'release',
    label: 'Not before',
    least: 80,
    roomy: true,
    sort: (r) => r.terms.release ?? 0,
    cell: (r, { timeZone }) =>
      r.terms.release === null ? (
        <span className={styles.soft}>at once</span>
      ) : (
        formatWallDate(instant(r.terms.release), timeZone)
      ),
  },
  {
    id: 'importance',
    label: 'Importance',
    least: 98,
    roomy: true,
    sort: (r) => (r.order.rush ? -100 : 0) - r.terms.importance,
    cell: (r) => <Importance row={r} />,
  },
];

/** What these columns need at least, in pixels. */
export const leastWidth = (columns: readonly LineColumn[]): number =>
  columns.reduce((sum, { least }) => sum + least, 0);

/** Where two columns are too many: what is made, under who wants it. */
const customerAndPart: LineColumn = {
  id: 'customer',
  label: 'Customer, part',
  least: 182,
  grow: 1.4,
  sort: (r) => r.order.customer,
  cell: (r) => (
    <span className={styles.folded}>
      <Words text={r.order.customer} />
      <span className={styles.soft}>
        <Words text={partWords(r)} />
      </span>
    </span>
  ),
};
const folded: readonly LineColumn[] = lineColumns.flatMap((column) =>
  column.id === 'customer' ? [customerAndPart] : column.id === 'part' ? [] : [column],
);

/** The table without its last `gone` roomy columns. */
const without = (columns: readonly LineColumn[], gone: number): readonly LineColumn[] => {
  const roomy = columns.filter((column) => column.roomy);
  const kept = new Set(roomy.slice(0, roomy.length - gone));
  return columns.filter((column) => !column.roomy || kept.has(column));
};

/** From all columns to the fewest: the usual four roomy ones go, then part folds under customer, then the other two. */
const choices: readonly (readonly LineColumn[])[] = [
  ...[0, 1, 2, 3, 4].map((gone) => without(lineColumns, gone)),
  ...[4, 5, 6].map((gone) => without(folded, gone)),
];

/** The columns of a table this many pixels wide: as many as fit, so that nothing is cut or scrolls sideways. */
export const columnsThatFit = (width: number): readonly LineColumn[] =>
  choices.find((columns) => leastWidth(columns) <= width) ?? (choices.at(-1) as readonly LineColumn[]);
