import { FileDown, Printer } from 'lucide-react';
import { useState } from 'react';
import { purchasesCsv } from '../../../core/report/cutting-words.ts';
import { purchasesOf, stockRows } from '../../../core/planning/stock-use.ts';
import { NEW_ROW } from '../../form/use-row-form.ts';
import { RowsFromFile, usePastedRows } from '../../form/pasted-rows.tsx';
import { useCuts, type CutsQuery } from '../../queries/cuts.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { Deliveries } from './deliveries.tsx';
import { DeliveryDialog } from './delivery-dialog.tsx';
import { History } from './history.tsx';
import { Purchases } from './purchases.tsx';
import { saveText } from './save-text.ts';
import { StockDialog } from './stock-dialog.tsx';
import { StockList } from './stock-list.tsx';

/** What lies in stock, what the plan reserves of it, and what is to be bought by when. */
export function StockScreen() {
  const query = useCuts();
  usePastedRows('stock');
  return (
    <Page
      title="Stock"
      lead="Sheets, coils and remnants on hand and expected, less what the plan uses of them."
      actions={<Tools query={query} />}
    >
      {query.is === 'waiting' && <Waiting doing="Working out the stock and what the plan uses of it" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Stock query={query} />}
    </Page>
  );
}

function Tools({ query }: { query: CutsQuery }) {
  const save = () => {
    if (query.is !== 'ready') return;
    const purchases = purchasesOf(stockRows(query.shop, query.cuts));
    saveText('purchase list.csv', purchasesCsv(query.shop, purchases));
  };
  return (
    <>
      <Button onPress={() => navigate('cutting')}>Cutting</Button>
      <RowsFromFile list="stock" label="Counts from a file" />
      <Button icon={FileDown} onPress={save}>
        Save purchase list
      </Button>
      <Button icon={Printer} onPress={() => navigate('print', 'purchases')}>
        Print it
      </Button>
    </>
  );
}

function Stock({ query }: { query: Extract<CutsQuery, { is: 'ready' }> }) {
  const { shop, plan, now, cuts } = query;
  const [list, id] = usePlace().path;
  const [tab, setTab] = useState('hand');
  if (shop.sheet.length === 0)
    return (
      <EmptyState title="No stock yet">
        <p>Sheet sizes are entered in Shop, Sheet sizes; then they can be received and counted here.</p>
      </EmptyState>
    );
  const rows = stockRows(shop, cuts);
  const purchases = purchasesOf(rows);
  const opened = list === 'stock' && rows.find(({ sheet }) => sheet.id === id);
  const delivery = list === 'deliveries' ? (shop.delivery.find((one) => one.id === id) ?? null) : null;
  return (
    <>
      <Tabs
        label="Stock"
        selected={list === 'deliveries' ? 'expected' : tab}
        onSelect={(next) => {
          setTab(next);
          if (next === 'expected') navigate('deliveries');
          else if (list === 'deliveries') navigate('stock');
        }}
        tabs={[
          { id: 'hand', label: 'On hand', content: <StockList shop={shop} rows={rows} /> },
          {
            id: 'expected',
            label: 'Expected',
            count: shop.delivery.length,
            content: <Deliveries {...{ shop, plan, now }} />,
          },
          {
            id: 'buy',
            label: 'To buy',
            count: purchases.length,
            content: <Purchases shop={shop} purchases={purchases} />,
          },
          { id: 'history', label: 'History', content: <History shop={shop} movements={shop.movement} /> },
        ]}
      />
      {(delivery || (list === 'deliveries' && id === NEW_ROW)) && (
        <DeliveryDialog
          key={delivery?.id ?? NEW_ROW}
          shop={shop}
          row={delivery}
          onClose={() => navigate('deliveries')}
        />
      )}
      {opened && <StockDialog shop={shop} row={opened} onClose={() => navigate('stock')} />}
    </>
  );
}
