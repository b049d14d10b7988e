import type { ReactNode } from 'react';
import { formatClock, formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatCutLength, type LengthUnits } from '../../../core/units/length.ts';
import { shortDuration } from '../../../core/units/duration.ts';
import { Swatch } from '../../ui/choice.tsx';
import { ChanceTag } from '../../ui/chance-tag.tsx';
import { Tag, type TagLook } from '../../ui/tag.tsx';
import type { LineRow, Standing } from './line-rows.ts';
import styles from './orders.module.css';

/** How the shop writes times and lengths. */
export interface Writing {
  readonly timeZone: string;
  readonly units: LengthUnits;
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
  | 'weight'
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

/** "Fri 4 Dec 14:00" */
const wall = (at: number, { timeZone }: Writing): string =>
  `${formatWallDate(instant(at), timeZone)} ${formatClock(instant(at), timeZone)}`;

const standingLook: Readonly<Record<Standing, TagLook>> = {
  open: 'plain',
  held: 'warn',
  done: 'fine',
  cancelled: 'plain',
};

function Lateness({ row }: { row: LineRow }) {
  if (row.trouble !== null) return <Tag look="warn">cannot be planned</Tag>;
  if (row.lateness === null) return null;
  if (row.lateness > 0) return <Tag look="late">{`late ${shortDuration(row.lateness)}`}</Tag>;
  return (
    <span className={styles.soft}>
      {row.lateness === 0 ? 'just in time' : `${shortDuration(-row.lateness)} early`}
    </span>
  );
}

const Weight = ({ row: { order } }: { row: LineRow }) => (
  <>
    {order.rush && <Tag look="accent">rush</Tag>} {order.weight !== 1 && `×${order.weight}`}
  </>
);

/** Words that may be cut short; the whole stands in the tooltip. */
const Words = ({ text }: { text: string }) => (
  <span className={styles.words} title={text}>
    {text}
  </span>
);

/** Sorts what has no value behind all that has one. */
const LAST = Number.MAX_SAFE_INTEGER;

export const lineColumns: readonly LineColumn[] = [
  { id: 'line', label: 'Line', least: 76, sort: (r) => r.id, cell: (r) => <strong>{r.id}</strong> },
  {
    id: 'customer',
    label: 'Customer',
    least: 80,
    grow: 1.3,
    sort: (r) => r.order.customer,
    cell: (r) => <Words text={r.order.customer} />,
  },
  {
    id: 'part',
    label: 'Part',
    least: 80,
    grow: 1.1,
    sort: (r) => r.partName,
    cell: (r) => (
      <Words text={r.line.makeUpFor ? `${r.partName}, again for ${r.line.makeUpFor}` : r.partName} />
    ),
  },
  {
    id: 'quantity',
    label: 'Pieces',
    least: 64,
    right: true,
    edits: 'quantity',
    sort: (r) => r.line.quantity,
    cell: (r) => r.line.quantity,
  },
  {
    id: 'metal',
    label: 'Metal',
    least: 92,
    grow: 1.4,
    sort: (r) => r.metal,
    cell: (r) => (
      <span className={styles.stock} title={r.metal}>
        <Swatch hex={r.hex} />
        <span className={styles.words}>{r.metal}</span>
      </span>
    ),
  },
  {
    id: 'due',
    label: 'Due',
    least: 140,
    edits: 'due',
    sort: (r) => r.order.due,
    cell: (r, writing) => wall(r.order.due, writing),
  },
  {
    id: 'end',
    label: 'Planned end',
    least: 164,
    sort: (r) => r.end ?? LAST,
    cell: (r, writing) =>
      r.end !== null && (
        <span
          className={r.unplanned ? styles.soft : ''}
          title={r.unplanned ? 'Not planned yet: behind all that is.' : ''}
        >
          {`${r.unplanned ? '≈ ' : ''}${wall(r.end, writing)}`}
        </span>
      ),
  },
  {
    id: 'lateness',
    label: 'Late or early',
    least: 116,
    sort: (r) => -(r.lateness ?? -LAST),
    cell: (r) => <Lateness row={r} />,
  },
  {
    id: 'chance',
    label: 'On time',
    least: 68,
    sort: (r) => r.onTime ?? LAST,
    cell: (r) => r.onTime !== null && <ChanceTag share={r.onTime} short />,
  },
  {
    id: 'status',
    label: 'Status',
    least: 88,
    roomy: true,
    edits: 'status',
    sort: (r) => r.standing,
    cell: (r) => <Tag look={standingLook[r.standing]}>{r.standing}</Tag>,
  },
  {
    id: 'length',
    label: 'Length',
    least: 76,
    roomy: true,
    right: true,
    sort: (r) => r.line.lengthMm,
    cell: (r, { units }) => formatCutLength(r.line.lengthMm, units),
  },
  {
    id: 'release',
    label: 'Release',
    least: 92,
    roomy: true,
    sort: (r) => r.order.release ?? 0,
    cell: (r, { timeZone }) =>
      r.order.release === null ? (
        <span className={styles.soft}>at once</span>
      ) : (
        formatWallDate(instant(r.order.release), timeZone)
      ),
  },
  {
    id: 'weight',
    label: 'Weight',
    least: 72,
    roomy: true,
    sort: (r) => (r.order.rush ? -100 : 0) - r.order.weight,
    cell: (r) => <Weight row={r} />,
  },
];

/** What these columns need at least, in pixels. */
export const leastWidth = (columns: readonly LineColumn[]): number =>
  columns.reduce((sum, { least }) => sum + least, 0);

/** The columns of a table this many pixels wide: roomy ones give way, the last first, before anything scrolls sideways. */
export function columnsThatFit(width: number): readonly LineColumn[] {
  const shown = [...lineColumns];
  while (shown.at(-1)?.roomy && leastWidth(shown) > width) shown.pop();
  return shown;
}
