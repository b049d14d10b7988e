import { metalName } from '../../../core/shop/metal-name.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import { lotOf, lotWords, type StockKnows } from '../../../core/material/lot.ts';
import type { StockRow } from '../../../core/planning/stock-use.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { navigate } from '../../router.ts';
import { Swatch } from '../../ui/choice.tsx';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './stock.module.css';

/** Everything in stock; Enter opens one to receive it, set its count, add or subtract. */
export const StockList = ({ shop, rows }: { shop: Shop; rows: readonly StockRow[] }) => (
  <DataTable
    label="Stock on hand"
    columns={columnsOf(shop)}
    rows={rows}
    rowId={({ sheet }) => sheet.id}
    onOpen={({ sheet }) => navigate('stock', sheet.id)}
    sortedBy={{ column: 'state', direction: 'ascending' }}
  />
);

/** The dye lot, paint system and film of a stock; the row without any is the size as it is bought. */
const lotColumn = (knows: StockKnows): TableColumn<StockRow> => ({
  id: 'lot',
  label: 'Lot',
  cell: ({ sheet }) => lotWords(lotOf(knows, sheet)),
  sort: ({ sheet }) => lotWords(lotOf(knows, sheet)),
});

/** Pieces that deliveries bring. */
export const expectedOf = ({ expected }: StockRow): number =>
  expected.reduce((sum, { pieces }) => sum + pieces, 0);

/** Pieces that the plan takes of it. */
export const reservedOf = (row: StockRow): number => row.sheet.onHand + expectedOf(row) - row.left;

const COUNTS: TableColumn<StockRow>[] = [
  {
    id: 'hand',
    label: 'On hand',
    right: true,
    cell: ({ sheet }) => sheet.onHand,
    sort: ({ sheet }) => sheet.onHand,
  },
  {
    id: 'expected',
    label: 'Expected',
    right: true,
    cell: (row) => expectedOf(row) || '',
    sort: expectedOf,
  },
  {
    id: 'reserved',
    label: 'Reserved',
    right: true,
    cell: reservedOf,
    sort: reservedOf,
  },
  { id: 'left', label: 'Left', right: true, cell: ({ left }) => left, sort: ({ left }) => left },
];

function columnsOf(shop: Shop): TableColumn<StockRow>[] {
  const { timeZone, stockKnows: knows } = shop.settings;
  const hex = (id: string) => shop.colour.find((c) => c.id === id)?.hex ?? '#808080';
  return [
    {
      id: 'metal',
      label: 'Metal',
      cell: ({ sheet }) => (
        <span className={styles.metal}>
          <Swatch hex={hex(sheet.colourId)} />
          {metalName(shop, sheet)}
        </span>
      ),
      sort: ({ sheet }) => metalName(shop, sheet),
    },
    ...(knows ? [lotColumn(knows)] : []),
    { id: 'form', label: 'Form', cell: ({ sheet }) => sheet.form, sort: ({ sheet }) => sheet.form },
    {
      id: 'size',
      label: 'Width × length',
      cell: ({ sheet }) => (
        <>
          {formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings)}
          <span className={styles.code}>{sheet.id}</span>
        </>
      ),
      sort: ({ sheet }) => sheet.widthMm * sheet.lengthMm,
    },
    ...COUNTS,
    {
      id: 'state',
      label: 'Enough',
      cell: ({ shortFrom, short }) =>
        shortFrom === null ? (
          <Tag look="fine">enough</Tag>
        ) : (
          <Tag look="warn">{`${short} short from ${formatWallDate(shortFrom, timeZone)}`}</Tag>
        ),
      sort: ({ shortFrom }) => shortFrom ?? Infinity,
    },
  ];
}
