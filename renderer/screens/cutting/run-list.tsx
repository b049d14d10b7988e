import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { figuresOfCut } from '../../../core/report/cutting-words.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { navigate } from '../../router.ts';
import { Swatch } from '../../ui/choice.tsx';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';
import { Tag } from '../../ui/tag.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';

export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** Every run in plan order; Enter opens one. */
export function RunList({ query: { shop, cuts } }: { query: ReadyCuts }) {
  return (
    <DataTable
      label="Runs on the shear"
      columns={columnsOf(shop)}
      rows={cuts}
      rowId={({ run }) => run.id}
      onOpen={({ run }) => navigate('cutting', run.id)}
      sortedBy={{ column: 'start', direction: 'ascending' }}
    />
  );
}

function columnsOf(shop: Shop): TableColumn<RunCut>[] {
  const { timeZone, currency } = shop.settings;
  const hex = (id: string) => shop.colour.find((c) => c.id === id)?.hex ?? '#808080';
  return [
    {
      id: 'start',
      label: 'Starts',
      cell: ({ run }) => formatDayAndClock(run.start, timeZone),
      sort: ({ run }) => run.start,
    },
    {
      id: 'metal',
      label: 'Metal',
      cell: ({ run }) => (
        <span className={styles.metal}>
          <Swatch hex={hex(run.colourId)} />
          {metalName(shop, run)}
        </span>
      ),
      sort: ({ run }) => metalName(shop, run),
    },
    {
      id: 'lines',
      label: 'Lines',
      cell: ({ run }) => linesOf(run.operations.map((o) => o.line.id)),
      sort: ({ run }) => run.id,
    },
    {
      id: 'sheets',
      label: 'Sheets',
      right: true,
      cell: ({ plan }) => (plan.ok ? figuresOfCut(plan.value).sheets : '–'),
      sort: ({ plan }) => (plan.ok ? figuresOfCut(plan.value).sheets : -1),
    },
    {
      id: 'scrap',
      label: 'Scrap',
      right: true,
      cell: ({ plan }) => (plan.ok ? percent(figuresOfCut(plan.value).scrap) : '–'),
      sort: ({ plan }) => (plan.ok ? figuresOfCut(plan.value).scrap : -1),
    },
    {
      id: 'cost',
      label: 'Stock cost',
      right: true,
      cell: ({ plan }) => (plan.ok ? formatMoney(plan.value.costCents, currency) : '–'),
      sort: ({ plan }) => (plan.ok ? plan.value.costCents : -1),
    },
    { id: 'state', label: 'Stock', cell: (cut) => <RunState cut={cut} />, sort: shortOf },
  ];
}

const linesOf = (ids: readonly string[]): string =>
  ids.length <= 3 ? ids.join(', ') : `${ids.slice(0, 2).join(', ')} and ${ids.length - 2} more`;

const shortOf = ({ takings }: RunCut): number => takings.reduce((sum, { short }) => sum + short, 0);

/** Whether a run can be cut from what is there. */
export function RunState({ cut }: { cut: RunCut }) {
  if (isTaken(cut)) return <Tag look="accent">sheets issued</Tag>;
  if (!cut.plan.ok) return <Tag look="late">cannot be cut</Tag>;
  if (cut.faults.length > 0) return <Tag look="late">steps do not fit</Tag>;
  const short = shortOf(cut);
  if (short > 0) return <Tag look="warn">{`${short} short`}</Tag>;
  return <Tag look="fine">on hand</Tag>;
}
