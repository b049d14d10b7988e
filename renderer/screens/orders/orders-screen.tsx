import { Archive, FileUp, Plus } from 'lucide-react';
import { useMemo } from 'react';
import type { Shop } from '../../../core/shop/state.ts';
import { usePastedRows } from '../../form/pasted-rows.tsx';
import { useChances } from '../../queries/chances.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { usePlan } from '../../queries/plan.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { sortRows } from '../../ui/sort-rows.ts';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { openImport } from '../import/kinds.ts';
import { ChosenLine } from './chosen-line.tsx';
import { FilterBar } from './filter-bar.tsx';
import { lineColumns } from './line-columns.tsx';
import { countFacets, endOfWeek, everything, filterLines } from './line-filter.ts';
import { LineGrid } from './line-grid.tsx';
import { lineRows, type LineRow } from './line-rows.ts';
import { KeptDrafts } from './kept-drafts.tsx';
import { NoOrders } from './no-orders.tsx';
import { NEW_ORDER } from './order-draft.ts';
import { OrderDialog } from './order-dialog.tsx';
import { useOrdersView } from './orders-view.ts';

const open = (row: LineRow) => navigate('orders', row.order.id);

/** Every line of every work order: find, sort, change, add. */
export function OrdersScreen() {
  const { data: shop, error } = useShop();
  const chosen = usePlace().path[1];
  usePastedRows('orders');
  return (
    <Page title="Orders" actions={<Actions />}>
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the orders" />}
      {shop && <KeptDrafts />}
      {shop && (shop.line.length === 0 ? <NoOrders shop={shop} /> : <Lines shop={shop} />)}
      {shop && chosen !== undefined && (
        <OrderDialog
          key={chosen}
          shop={shop}
          orderId={chosen === NEW_ORDER ? null : chosen}
          onClose={() => navigate('orders')}
        />
      )}
    </Page>
  );
}

const Actions = () => (
  <>
    <Button icon={Archive} onPress={() => navigate('orders', 'archive')}>
      Archive
    </Button>
    <Button icon={FileUp} onPress={() => openImport('orders')}>
      Import from a file
    </Button>
    <Button look="primary" icon={Plus} onPress={() => navigate('orders', NEW_ORDER)}>
      New work order
    </Button>
  </>
);

function Lines({ shop }: { shop: Shop }) {
  const query = usePlan();
  const plan = query.is === 'ready' ? query.plan : null;
  const { filter, sort, lineId, narrow } = useOrdersView();
  const weekEnd = endOfWeek(useNow(), shop.settings.timeZone);
  const chances = useChances();
  const rows = useMemo(() => lineRows(shop, plan, chances), [shop, plan, chances]);
  const counts = useMemo(() => countFacets(rows, weekEnd), [rows, weekEnd]);
  const shown = useMemo(() => {
    const by = lineColumns.find(({ id }) => id === sort.column)?.sort ?? ((row: LineRow) => row.id);
    return sortRows(filterLines(rows, filter, weekEnd), by, sort.descending, (row) => row.id);
  }, [rows, filter, sort, weekEnd]);
  return (
    <>
      {query.is === 'failed' && <SentenceError message={query.message} />}
      <FilterBar shop={shop} counts={counts} />
      {shown.length === 0 ? (
        <EmptyState title="No line fits">
          <p>{`${rows.length} lines are here, none fits all that is asked for.`}</p>
          <Button onPress={() => narrow(everything)}>Show all open lines</Button>
        </EmptyState>
      ) : (
        <LineGrid shop={shop} rows={shown} onOpen={open} />
      )}
      <ChosenLine
        shop={shop}
        row={shown.find((row) => row.id === lineId) ?? null}
        plan={plan}
        onOpen={open}
      />
    </>
  );
}
