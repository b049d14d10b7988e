import { create } from 'zustand';

/** The dialog about plans that is open over whatever screen; null: none. */
interface PlansView {
  readonly asked: 'publish' | 'plans' | null;
  readonly ask: (asked: 'publish' | 'plans') => void;
  readonly close: () => void;
}

export const usePlansView = create<PlansView>((set) => ({
  asked: null,
  ask: (asked) => set({ asked }),
  close: () => set({ asked: null }),
}));
