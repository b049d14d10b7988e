import { create } from 'zustand';
import type { Scale } from './scale.ts';

/** What the board shows, kept while other screens are open: the selected operation and the window on time. */
interface BoardView {
  readonly selected: string | null;
  /** Null until the board has been drawn once. */
  readonly scale: Scale | null;
  readonly select: (operation: string | null) => void;
  readonly look: (scale: Scale) => void;
}

export const useBoardView = create<BoardView>((set) => ({
  selected: null,
  scale: null,
  select: (selected) => set({ selected }),
  look: (scale) => set({ scale }),
}));
