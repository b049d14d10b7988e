import { ArrowLeft, Search } from 'lucide-react';
import { useDeferredValue, useState } from 'react';
import { Input, SearchField } from 'react-aria-components';
import type { ArchivePage } from '../../../../core/contract/archive.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { counted } from '../../../../core/units/count.ts';
import { formatDayYearAndClock } from '../../../../core/time/wall.ts';
import { useArchive } from '../../../queries/archive.ts';
import { useShop } from '../../../queries/hooks.ts';
import { navigate, usePlace } from '../../../router.ts';
import { Button } from '../../../ui/button.tsx';
import { DataTable, type TableColumn } from '../../../ui/data-table.tsx';
import { Page } from '../../../ui/page.tsx';
import { EmptyState, SentenceError, Waiting } from '../../../ui/states.tsx';
import look from '../orders.module.css';
import styles from './archive.module.css';
import { ArchivedOrderDialog } from './archived-order.tsx';

/** Orders that were done or cancelled some time ago: found and read, never changed. */
export function ArchiveScreen() {
  const { data: shop, error } = useShop();
  const opened = usePlace().path[2];
  return (
    <Page
      title="Archive"
      lead="Work orders that were done or cancelled more than a week ago. They are kept as they were and cannot be changed."
      actions={
        <Button icon={ArrowLeft} onPress={() => navigate('orders')}>
          Back to orders
        </Button>
      }
    >
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the archive" />}
      {shop && <Found shop={shop} />}
      {shop && opened !== undefined && (
        <ArchivedOrderDialog
          key={opened}
          shop={shop}
          orderId={opened}
          onClose={() => navigate('orders', 'archive')}
        />
      )}
    </Page>
  );
}

function Found({ shop }: { shop: Shop }) {
  const [text, setText] = useState('');
  const sought = useDeferredValue(text).trim();
  const { data, error, hasNextPage, isFetching, fetchNextPage } = useArchive(sought);
  const rows = data?.pages.flatMap(({ orders }) => orders) ?? [];
  return (
    <>
      <div className={look.filters} role="search">
        <SearchField
          aria-label="Find archived orders"
          className={look.search ?? ''}
          value={text}
          onChange={setText}
        >
          <Search size={16} aria-hidden />
          <Input className={look.searchInput ?? ''} placeholder="order, customer or part" />
        </SearchField>
      </div>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Searching the archive" />}
      {data && rows.length === 0 && <NothingFound sought={sought} />}
      {rows.length > 0 && (
        <DataTable
          label="Archived orders"
          columns={columnsFor(shop.settings.timeZone)}
          rows={rows}
          rowId={({ order }) => order.id}
          onOpen={({ order }) => navigate('orders', 'archive', order.id)}
        />
      )}
      {hasNextPage && (
        <div className={styles.more}>
          <Button onPress={() => void fetchNextPage()} isDisabled={isFetching}>
            Show older ones
          </Button>
        </div>
      )}
    </>
  );
}

const NothingFound = ({ sought }: { sought: string }) =>
  sought === '' ? (
    <EmptyState title="Nothing is in the archive yet">
      <p>A work order comes here a week after it was done or cancelled.</p>
    </EmptyState>
  ) : (
    <EmptyState title={`No archived order has “${sought}” in it`}>
      <p>Its number, its customer and the parts of its lines were searched.</p>
    </EmptyState>
  );

type Row = ArchivePage['orders'][number];

const columnsFor = (timeZone: string): readonly TableColumn<Row>[] => [
  { id: 'order', label: 'Order', cell: ({ order }) => order.id, width: 110 },
  { id: 'customer', label: 'Customer', cell: ({ order }) => order.customer },
  { id: 'lines', label: 'Lines', cell: ({ lines }) => lines, right: true, width: 80 },
  {
    id: 'pieces',
    label: 'Pieces',
    cell: ({ pieces }) => counted(pieces, 'piece'),
    right: true,
    width: 120,
  },
  { id: 'due', label: 'Due', cell: ({ order }) => formatDayYearAndClock(order.due, timeZone), width: 210 },
  {
    id: 'closed',
    label: 'Closed',
    cell: ({ order }) =>
      `${order.status} ${order.closedAt === null ? '' : formatDayYearAndClock(order.closedAt, timeZone)}`,
    width: 280,
  },
];
