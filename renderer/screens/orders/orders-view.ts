import { create } from 'zustand';
import { everything, type LineFilter } from './line-filter.ts';
import type { ColumnId } from './line-columns.tsx';

/** What the orders screen shows, kept while other screens are open. */
interface OrdersView {
  readonly filter: LineFilter;
  readonly sort: { readonly column: ColumnId; readonly descending: boolean };
  /** The line that the keyboard is on. */
  readonly lineId: string | null;
  readonly narrow: (patch: Partial<LineFilter>) => void;
  /** Sort by a column; by the same again, the other way round. */
  readonly sortBy: (column: ColumnId) => void;
  readonly choose: (lineId: string | null) => void;
}

export const useOrdersView = create<OrdersView>((set) => ({
  filter: everything,
  sort: { column: 'due', descending: false },
  lineId: null,
  narrow: (patch) => set((state) => ({ filter: { ...state.filter, ...patch } })),
  sortBy: (column) =>
    set(({ sort }) => ({ sort: { column, descending: sort.column === column && !sort.descending } })),
  choose: (lineId) => set({ lineId }),
}));
