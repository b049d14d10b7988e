import { queryOptions, useMutation, useQuery, useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { InputOf } from '../../core/contract/call.ts';
import { contract } from '../../core/contract/index.ts';
import type { Command } from '../../core/edit/command.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import { invoke } from './invoke.ts';
import { takeChanges } from './client.ts';
import { keys } from './keys.ts';
import { readAgain, send, settle, type ShopCopy } from './shop-copy.ts';

const status = queryOptions({ queryKey: keys.status, queryFn: () => invoke(contract.appStatus, {}) });

const shopCopy = (client: QueryClient) =>
  queryOptions({
    queryKey: keys.shop,
    queryFn: async () =>
      readAgain(client.getQueryData<ShopCopy>(keys.shop), await invoke(contract.shopRead, {})),
    structuralSharing: false,
  });

/** Ask for what every screen needs before one is drawn: the host answers while the window draws its frame. */
export function askFirst(client: QueryClient): void {
  void client.prefetchQuery(status);
  // Refused while the file is fresh: it is asked again once the shop begins.
  void client.prefetchQuery(shopCopy(client));
}

/** Where we run, which file is open, and the host's clock when it was asked. */
export const useStatus = () => useQuery(status);

/** The shop: what is open, and what was closed in the last days. */
export const useShop = () =>
  useQuery({ ...shopCopy(useQueryClient()), select: ({ shop }: ShopCopy) => shop });

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

let sent = 0;

/**
 * Carry out one command. The screen shows its effect at once; the host's answer decides. Resolves with the label and the
 * step or fact it became; refused, the screen shows what the host holds.
 */
export function useCommand() {
  const client = useQueryClient();
  const change = (to: (copy: ShopCopy) => ShopCopy) =>
    client.setQueryData<ShopCopy>(keys.shop, (copy) => copy && to(copy));
  return useMutation({
    mutationFn: (command: Command) => invoke(contract.editApply, { command }),
    onMutate: (command) => {
      const id = ++sent;
      change((copy) => send(copy, id, command));
      return id;
    },
    onSuccess: (moved) => {
      if (moved.changes.length > 0) takeChanges(client, moved);
    },
    onSettled: (_moved, _error, _command, id) => id !== undefined && change((copy) => settle(copy, id)),
  });
}

/** Undo one step, the newest of this window where none is named. It is only said to be undone when the screens show it. */
export const useUndo = () => useStep((stepId: number | null) => invoke(contract.editUndo, { stepId }));
export const useRedo = () => useStep((stepId: number | null) => invoke(contract.editRedo, { stepId }));

/** Take back what was reported, within a minute, or with a reason. */
export const useTakeBack = () =>
  useStep((fact: { readonly factId: number; readonly reason: string }) =>
    invoke(contract.editTakeBack, fact),
  );

function useStep<I, T>(step: (input: I) => Promise<T>) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: step,
    // What changed was told by a push, on its way perhaps: the answer holds when the shop as it is has been read.
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
