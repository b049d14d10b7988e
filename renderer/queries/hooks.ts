import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { InputOf } from '../../core/contract/call.ts';
import { contract } from '../../core/contract/index.ts';
import { applyCommand } from '../../core/edit/apply.ts';
import type { Command } from '../../core/edit/command.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';

/** Where we run, which file is open, and the host's clock when it was asked. */
export const useStatus = () =>
  useQuery({ queryKey: keys.status, queryFn: () => invoke(contract.appStatus, {}) });

/** Every row of the shop but finished records. */
export const useShop = () =>
  useQuery({ queryKey: keys.shop, queryFn: (): Promise<Shop> => invoke(contract.shopRead, {}) });

/** What can be undone and redone, newest first. */
export const useHistory = () =>
  useQuery({ queryKey: keys.history, queryFn: () => invoke(contract.editHistory, {}) });

/** The search that is going, or the last one; null before the first. */
export const useSearch = () =>
  useQuery({ queryKey: keys.search, queryFn: () => invoke(contract.searchRead, {}) });

const TICK_MS = 30_000;

/** The shop's present, read again every 30 s; it stands still when the host's clock does. */
export function useNow(): Instant {
  const { data } = useStatus();
  const fixed = data?.fixedClock ? data.now : null;
  const [ticked, setTicked] = useState(() => Math.floor(Date.now() / 1000));
  useEffect(() => {
    if (fixed !== null) return;
    const timer = setInterval(() => setTicked(Math.floor(Date.now() / 1000)), TICK_MS);
    return () => clearInterval(timer);
  }, [fixed]);
  return instant(fixed ?? ticked);
}

/** Tells the present to the second, for what is written down at a press. */
export function usePresent(): () => Instant {
  const { data } = useStatus();
  const fixed = data?.fixedClock ? data.now : null;
  return () => instant(fixed ?? Math.floor(Date.now() / 1000));
}

/**
 * Carry out one command of the planner. The screen shows its effect at once; the host's answer decides.
 * Resolves with the label of the history's new step; refused, the screen goes back to what the host holds.
 */
export function useCommand() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (command: Command) => invoke(contract.editApply, { command }),
    onMutate: (command) => {
      const shop = client.getQueryData<Shop>(keys.shop);
      if (!shop) return;
      const edit = applyCommand(shop, command);
      if (edit.ok) client.setQueryData(keys.shop, withChanges(shop, edit.value.changes));
    },
    onError: () => client.invalidateQueries({ queryKey: keys.shop }),
  });
}

/** Undo one step. It is only said to be undone when the screens show the shop without it. */
export const useUndo = () => useStep(() => invoke(contract.editUndo, {}));
export const useRedo = () => useStep(() => invoke(contract.editRedo, {}));

function useStep<T>(step: () => Promise<T>) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: step,
    // The push has started to read the shop again; that reading is waited for, not started again.
    onSuccess: () => client.invalidateQueries({ queryKey: keys.shop }, { cancelRefetch: false }),
  });
}

export const useSearchStart = () =>
  useMutation({
    mutationFn: (input: { seconds: number; seed: number; protect: number | null }) =>
      invoke(contract.searchStart, input),
  });
export const useSearchStop = () =>
  useMutation({ mutationFn: (jobId: string) => invoke(contract.searchStop, { jobId }) });

/** First start: fill the fresh file, then read everything again. */
export function useBegin() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: InputOf<typeof contract.appBegin>) => invoke(contract.appBegin, input),
    onSuccess: () => client.invalidateQueries(),
  });
}
