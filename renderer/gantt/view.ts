import { create } from 'zustand';
import type { Scale } from './scale.ts';

/** What the board shows, kept while other screens are open: the selected operations and the window on time. */
interface BoardView {
  /** The one that the keys stand on, and that the panel beside the board is about. */
  readonly selected: string | null;
  /** All that are moved or pinned together; usually the selected one alone. */
  readonly chosen: readonly string[];
  /** Where a range begins that Shift extends. */
  readonly anchor: string | null;
  /** What stands beside the board, and the selection it was chosen for. */
  readonly side: { readonly tab: string; readonly of: string | null };
  /** A line that another screen wants to be found on the board; null when it was. */
  readonly sought: string | null;
  readonly seek: (lineId: string | null) => void;
  /** Operations marked because something beside the board speaks of them. */
  readonly marked: readonly string[];
  /** From an instant on, not a board second, so that it stays when closed time is folded. Null until the board has been drawn once. */
  readonly scale: Scale | null;
  /** This one alone, or none. */
  readonly select: (operation: string | null) => void;
  /** These together; the keys stand on `selected`. A range keeps the anchor that it has. */
  readonly choose: (chosen: readonly string[], selected: string | null, anchor?: string | null) => void;
  /** Select and show a tab about it. */
  readonly show: (tab: string, operation: string | null) => void;
  readonly mark: (operations: readonly string[]) => void;
  readonly look: (scale: Scale) => void;
}

const alone = (selected: string | null) => ({
  selected,
  chosen: selected === null ? [] : [selected],
  anchor: selected,
});

export const useBoardView = create<BoardView>((set) => ({
  selected: null,
  chosen: [],
  anchor: null,
  side: { tab: 'late', of: null },
  sought: null,
  seek: (sought) => set({ sought }),
  marked: [],
  scale: null,
  select: (selected) => set(alone(selected)),
  choose: (chosen, selected, anchor = selected) => set({ chosen, selected, anchor }),
  // Another tab about the selected one leaves what was chosen with it.
  show: (tab, operation) =>
    set((view) => ({
      ...(operation === view.selected ? {} : alone(operation)),
      side: { tab, of: operation },
    })),
  mark: (marked) => set({ marked }),
  look: (scale) => set({ scale }),
}));
