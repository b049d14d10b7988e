import { create } from 'zustand';
import type { Scale } from './scale.ts';

/** What the board shows, kept while other screens are open: the selected operation and the window on time. */
interface BoardView {
  readonly selected: string | null;
  /** What stands beside the board, and the selection it was chosen for. */
  readonly side: { readonly tab: string; readonly of: string | null };
  /** Operations marked because something beside the board speaks of them. */
  readonly marked: readonly string[];
  /** Null until the board has been drawn once. */
  readonly scale: Scale | null;
  readonly select: (operation: string | null) => void;
  /** Select and show a tab about it. */
  readonly show: (tab: string, operation: string | null) => void;
  readonly mark: (operations: readonly string[]) => void;
  readonly look: (scale: Scale) => void;
}

export const useBoardView = create<BoardView>((set) => ({
  selected: null,
  side: { tab: 'late', of: null },
  marked: [],
  scale: null,
  select: (selected) => set({ selected }),
  show: (tab, operation) => set({ selected: operation, side: { tab, of: operation } }),
  mark: (marked) => set({ marked }),
  look: (scale) => set({ scale }),
}));
