import type { Shop } from '../../../core/shop/state.ts';
import type { Movement } from '../../../core/shop/stock.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { DataTable, type TableColumn } from '../../ui/data-table.tsx';

const WORDS: Readonly<Record<Movement['what'], string>> = {
  received: 'received',
  counted: 'count set',
  corrected: 'added or subtracted',
  used: 'issued',
  kept: 'remnant kept',
};

/** What came and went, newest first. */
export function History({ shop, movements }: { shop: Shop; movements: readonly Movement[] }) {
  const { timeZone } = shop.settings;
  const columns: TableColumn<Movement>[] = [
    {
      id: 'at',
      label: 'When',
      cell: ({ at }) => formatDayAndClock(at, timeZone),
      sort: ({ at }) => at,
    },
    { id: 'sheet', label: 'Stock', cell: ({ sheetId }) => sheetId, sort: ({ sheetId }) => sheetId },
    { id: 'what', label: 'What', cell: ({ what }) => WORDS[what], sort: ({ what }) => WORDS[what] },
    {
      id: 'pieces',
      label: 'Pieces',
      right: true,
      cell: ({ pieces }) => (pieces > 0 ? `+${pieces}` : pieces),
      sort: ({ pieces }) => pieces,
    },
    { id: 'after', label: 'Then on hand', right: true, cell: ({ after }) => after },
    { id: 'note', label: 'Note', cell: ({ note }) => note },
  ];
  return (
    <DataTable
      label="History of the stock"
      columns={columns}
      rows={movements}
      rowId={({ id }) => id}
      sortedBy={{ column: 'at', direction: 'descending' }}
      empty="Nothing was received, counted or issued yet."
    />
  );
}
