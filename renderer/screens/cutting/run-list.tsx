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

/** Rows of runs that stay the same objects while what they tell is the same, so that only those with news are drawn. */
export function keptRows(runs: readonly ShearRun[]): (cuts: readonly RunCut[]) => Row[] {
  const kept = new Map<string, Row>();
  return (cuts) => {
    const byId = new Map(cuts.map((cut) => [cut.run.id, cut]));
    return runs.map((run) => {
      const before = kept.get(run.id);
      const cut = byId.get(run.id);
      if (before && tellsTheSame(before.cut, cut)) return before;
      const row = { run, cut };
      kept.set(run.id, row);
      return row;
    });
  };
}

/** Whether the list says the same of both: runs are cut anew when one before them changes, most with the sheets they had. */
const tellsTheSame = (a: RunCut | undefined, b: RunCut | undefined): boolean =>
  a === b ||
  (a?.plan.ok === true &&
    b?.plan.ok === true &&
    a.plan.value === b.plan.value &&
    a.taken === b.taken &&
    a.faults.length === b.faults.length &&
    shortOf(a) === shortOf(b));

/** Every run in plan order, at once; figures come as its sheets are planned. Enter opens one. */
export function RunList({ query: { shop, plan, cuts } }: { query: ReadyCuts }) {
  const runs = useMemo(() => shearRuns(shop, plan), [shop, plan]);
  const columns = useMemo(() => columnsOf(shop), [shop]);
  const rowsOf = useMemo(() => keptRows(runs), [runs]);
  const rows = useMemo(() => rowsOf(cuts), [rowsOf, cuts]);
  return (
    <DataTable
      label="Runs on the shear"
      columns={columns}
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
