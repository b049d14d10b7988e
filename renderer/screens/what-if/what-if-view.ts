import { create } from 'zustand';
import type { Queues } from '../../../core/schedule/problem.ts';
import type { Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';

/** What is asked about the plan in a dialog over whatever screen is open; null: nothing. */
type WhatIf =
  | { readonly about: 'rush'; readonly lineIds: readonly string[] }
  | {
      readonly about: 'trouble';
      readonly trouble: Trouble;
      /** The hours that were saved for it; null: still to be entered. */
      readonly outage: Outage | null;
    }
  /** Hours out of service that end earlier, or last longer. */
  | { readonly about: 'outage'; readonly downtimeId: string }
  | {
      readonly about: 'metal';
      /** null: still to be chosen. */
      readonly deliveryId: string | null;
      readonly outage: Outage | null;
    };

/** What went wrong; `machineId` null: still to be chosen. */
export interface Trouble {
  readonly kind: 'machine' | 'operator';
  readonly machineId: string | null;
}

/**
 * Makes a plan the shop's own as one step of the history, under this name.
 * @param shop the one that the plan was made for
 */
export type UsePlan = (shop: Shop, queues: Queues, label: string) => void;

interface WhatIfView {
  readonly asked: WhatIf | null;
  readonly ask: (asked: WhatIf) => void;
  readonly close: () => void;
}

export const useWhatIf = create<WhatIfView>((set) => ({
  asked: null,
  ask: (asked) => set({ asked }),
  close: () => set({ asked: null }),
}));

/** Open the three ways to take lines in. */
export const askRush = (lineIds: readonly string[]): void =>
  useWhatIf.getState().ask({ about: 'rush', lineIds });

/** Open the form for a machine that is down or an operator who is out. */
export const askTrouble = (kind: Trouble['kind'], machineId: string | null): void =>
  useWhatIf.getState().ask({ about: 'trouble', trouble: { kind, machineId }, outage: null });

/** Ask whether a machine that stands still is back early, or takes longer. */
export const askOutage = ({ id }: { readonly id: string }): void =>
  useWhatIf.getState().ask({ about: 'outage', downtimeId: id });

/** Open the form for a delivery that comes later. */
export const askLateMetal = (deliveryId: string | null): void =>
  useWhatIf.getState().ask({ about: 'metal', deliveryId, outage: null });
