import { Plus } from 'lucide-react';
import { stockName } from '../../../core/edit/stock-commands.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Delivery } from '../../../core/shop/stock.ts';
import { formatWall } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { NEW_ROW } from '../../form/use-row-form.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './stock.module.css';

interface Props {
  shop: Shop;
  plan: PlanView;
  now: Instant;
}

/** What was ordered and has not come; Enter opens one to receive, change or remove it. */
export const Deliveries = ({ shop, plan, now }: Props) => (
  <>
    <div className={styles.above}>
      <p className={styles.soft}>
        {shop.settings.awaitMetal
          ? 'Lines that need them start when they are due, not before, in the order of the plan.'
          : 'Lines that need them are planned at once and said to lack metal: Settings say so.'}
      </p>
      <Button small icon={Plus} onPress={() => navigate('deliveries', NEW_ROW)}>
        Expect a delivery
      </Button>
    </div>
    <DataTable
      label="Expected deliveries"
      columns={columnsOf(shop, linesOf(plan), now)}
      rows={shop.delivery}
      rowId={({ id }) => id}
      onOpen={({ id }) => navigate('deliveries', id)}
      sortedBy={{ column: 'due', direction: 'ascending' }}
      empty="No delivery is expected. Enter what was ordered, and lines that need it wait for it."
    />
  </>
);

/** The lines that wait for each delivery. */
function linesOf({ operations }: PlanView): ReadonlyMap<string, readonly string[]> {
  const lines = new Map<string, string[]>();
  for (const { stage, line, metal } of operations.values())
    if (stage === 'shear')
      for (const { deliveryId } of metal?.awaited ?? [])
        lines.set(deliveryId, [...(lines.get(deliveryId) ?? []), line.id]);
  return lines;
}

function columnsOf(
  shop: Shop,
  lines: ReadonlyMap<string, readonly string[]>,
  now: Instant,
): TableColumn<Delivery>[] {
  const nameOf = ({ sheetId }: Delivery): string => {
    const sheet = shop.sheet.find(({ id }) => id === sheetId);
    return sheet ? stockName(shop, sheet) : sheetId;
  };
  return [
    {
      id: 'due',
      label: 'Expected',
      cell: ({ due }) => (
        <>
          {formatWall(instant(due), shop.settings.timeZone)}
          {due <= now && <Tag look="warn">overdue</Tag>}
        </>
      ),
      sort: ({ due }) => due,
    },
    { id: 'stock', label: 'Stock', cell: nameOf, sort: nameOf },
    {
      id: 'pieces',
      label: 'Pieces',
      right: true,
      cell: ({ pieces }) => pieces,
      sort: ({ pieces }) => pieces,
    },
    { id: 'lines', label: 'Lines that wait', cell: ({ id }) => (lines.get(id) ?? []).join(', ') },
    { id: 'note', label: 'Supplier’s note', cell: ({ note }) => note },
    { id: 'id', label: 'Code', cell: ({ id }) => id, sort: ({ id }) => id },
  ];
}
