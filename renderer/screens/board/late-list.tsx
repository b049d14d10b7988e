import { latenessOf, type LineLateness } from '../../../core/planning/lateness.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { counted } from '../../../core/units/count.ts';
import { shortDuration } from '../../../core/units/duration.ts';
import styles from './board.module.css';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';
import { Button } from '../../ui/button.tsx';
import { placeOf } from '../../router.ts';
import { Tag } from '../../ui/tag.tsx';

/** Lines that end after their due date, worst first. */
export const lateLinesOf = (shop: Shop, plan: PlanView): LineLateness[] =>
  latenessOf(shop, plan.schedule).filter((row) => row.lateness > 0);

/** More than anyone reads beside the board. */
const MOST = 100;

const leftOutWords = (count: number): string =>
  count === 0
    ? ''
    : ` ${counted(count, 'open line')} cannot be planned and ${count === 1 ? 'has' : 'have'} no end.`;

interface Props {
  rows: readonly LineLateness[];
  timeZone: string;
  /** Open lines that stand in no queue. */
  leftOut: number;
  onOpen: (lineId: string) => void;
  onWhy: (lineId: string) => void;
}

export function LateList({ rows, timeZone, leftOut, onOpen, onWhy }: Props) {
  const columns: TableColumn<LineLateness>[] = [
    {
      id: 'line',
      label: 'Line',
      cell: (row) => (
        <>
          {row.lineId}
          <span className={styles.due}>due {formatWallDate(instant(row.due), timeZone)}</span>
        </>
      ),
      sort: (row) => row.lineId,
    },
    {
      id: 'late',
      label: 'Late by',
      right: true,
      cell: (row) => <Tag look="late">{shortDuration(row.lateness)}</Tag>,
      sort: (row) => row.lateness,
    },
    {
      id: 'why',
      label: '',
      right: true,
      cell: (row) => (
        <Button
          small
          look="quiet"
          aria-label={`Why is ${row.lineId} late?`}
          onPress={() => onWhy(row.lineId)}
        >
          Why?
        </Button>
      ),
    },
  ];
  return (
    <div className={styles.late}>
      {rows.length > MOST && (
        <p className={styles.more}>
          The {MOST} latest of {rows.length} late lines; <a href={placeOf('orders')}>Orders</a> lists them
          all.
        </p>
      )}
      <DataTable
        label="Late lines"
        columns={columns}
        rows={rows.slice(0, MOST)}
        rowId={(row) => row.lineId}
        sortedBy={{ column: 'late', direction: 'descending' }}
        onOpen={(row) => onOpen(row.lineId)}
        empty={`Every planned line ends by its due date.${leftOutWords(leftOut)}`}
      />
    </div>
  );
}
