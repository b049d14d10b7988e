import { metalName } from '../../../core/shop/metal-name.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import type { Purchase } from '../../../core/planning/stock-use.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { navigate } from '../../router.ts';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';

/** What to buy, what is needed first on top. */
export const Purchases = ({ shop, purchases }: { shop: Shop; purchases: readonly Purchase[] }) => (
  <DataTable
    label="Purchase list"
    columns={columnsOf(shop)}
    rows={purchases}
    rowId={({ sheet }) => sheet.id}
    onOpen={({ sheet }) => navigate('stock', sheet.id)}
    empty="Nothing is missing: the stock on hand is enough for the plan."
  />
);

function columnsOf(shop: Shop): TableColumn<Purchase>[] {
  const { timeZone } = shop.settings;
  return [
    {
      id: 'by',
      label: 'Needed by',
      cell: ({ neededBy }) => formatWallDate(neededBy, timeZone),
      sort: ({ neededBy }) => neededBy,
    },
    {
      id: 'metal',
      label: 'Metal',
      cell: ({ sheet }) => metalName(shop, sheet),
      sort: ({ sheet }) => metalName(shop, sheet),
    },
    {
      id: 'size',
      label: 'Width × length',
      cell: ({ sheet }) => formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings),
    },
    {
      id: 'pieces',
      label: 'Pieces',
      right: true,
      cell: ({ pieces }) => pieces,
      sort: ({ pieces }) => pieces,
    },
    {
      id: 'cost',
      label: 'Cost',
      right: true,
      cell: ({ costCents }) => formatMoney(costCents, shop.settings),
      sort: ({ costCents }) => costCents,
    },
    { id: 'runs', label: 'For runs', cell: ({ runs }) => runs.join(', ') },
  ];
}
