import { useMemo } from 'react';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import { isTaken, type RunCut } from '../../../core/planning/cut-run.ts';
import { shearRuns, type ShearRun } from '../../../core/planning/runs.ts';
import { lotWarnings } from '../../../core/report/lot-words.ts';
import { figuresOfCut, runMetal } from '../../../core/report/cutting-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { navigate } from '../../router.ts';
import { Swatch } from '../../ui/choice.tsx';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';
import { Tag } from '../../ui/tag.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';
import { formatPercent } from '../../../core/units/number.ts';

/** A run, with its sheets once they are planned. */
interface Row {
  readonly run: ShearRun;
  readonly cut: RunCut | undefined;
}

/** Every run in plan order, at once; figures come as its sheets are planned. Enter opens one. */
export function RunList({ query: { shop, plan, cuts } }: { query: ReadyCuts }) {
  const runs = useMemo(() => shearRuns(shop, plan), [shop, plan]);
  const rows = useMemo(() => {
    const byId = new Map(cuts.map((cut) => [cut.run.id, cut]));
    return runs.map((run): Row => ({ run, cut: byId.get(run.id) }));
  }, [runs, cuts]);
  return (
    <DataTable
      label="Runs on the shear"
      columns={columnsOf(shop)}
      rows={rows}
      rowId={({ run }) => run.id}
      onOpen={({ run }) => navigate('cutting', run.id)}
      sortedBy={{ column: 'start', direction: 'ascending' }}
    />
  );
}

/** A column of a figure: as said of a planned run; "…" until it is planned, "–" where it cannot be cut. */
const figure = (
  id: string,
  label: string,
  value: (plan: CutPlan) => number,
  words: (value: number) => string,
): TableColumn<Row> => ({
  ...{ id, label, right: true },
  cell: ({ cut }) => (!cut ? '…' : cut.plan.ok ? words(value(cut.plan.value)) : '–'),
  sort: ({ cut }) => (cut?.plan.ok ? value(cut.plan.value) : -1),
});

function columnsOf(shop: Shop): TableColumn<Row>[] {
  const { timeZone } = shop.settings;
  const percent = (share: number) => formatPercent(share, shop.settings);
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
      cell: ({ run, cut }) => (
        <span className={styles.metal}>
          <Swatch hex={hex(run.colourId)} />
          {runMetal(shop, cut?.run ?? run)}
        </span>
      ),
      sort: ({ run }) => runMetal(shop, run),
    },
    {
      id: 'lines',
      label: 'Lines',
      cell: ({ run }) => linesOf(run.operations.map((o) => o.line.id)),
      sort: ({ run }) => run.id,
    },
    figure('sheets', 'Sheets', (plan) => figuresOfCut(plan).sheets, String),
    figure('yield', 'Yield', (plan) => figuresOfCut(plan).used, percent),
    figure('scrap', 'Scrap', (plan) => figuresOfCut(plan).scrap, percent),
    figure(
      'cost',
      'Stock cost',
      (plan) => plan.costCents,
      (cents) => formatMoney(cents, shop.settings),
    ),
    {
      id: 'state',
      label: 'Stock',
      cell: ({ cut }) => (cut ? <RunState cut={cut} /> : '…'),
      sort: ({ cut }) => (cut ? shortOf(cut) : -1),
    },
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
  if (lotWarnings(cut.run).length > 0) return <Tag look="warn">no single lot</Tag>;
  const short = shortOf(cut);
  if (short > 0) return <Tag look="warn">{`${short} short`}</Tag>;
  return <Tag look="fine">on hand</Tag>;
}
