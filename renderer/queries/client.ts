import { QueryClient } from '@tanstack/react-query';
import type { CutAnswers } from '../../core/contract/cuts.ts';
import type { Push } from '../../core/contract/push.ts';
import { withCutState, withFound } from './cut-answers.ts';
import { keys } from './keys.ts';
import { moveOn, type Moved, type ShopCopy } from './shop-copy.ts';

/** The host is on this machine: no retries, no refetching by age; pushes say when something is old. */
export const makeClient = (): QueryClient =>
  new QueryClient({
    defaultOptions: {
      queries: { networkMode: 'always', retry: false, staleTime: Infinity, refetchOnWindowFocus: false },
      mutations: { networkMode: 'always', retry: false },
    },
  });

/** Bring what the screens hold up to date after a push. */
export function takePush(client: QueryClient, push: Push): void {
  if (push.kind === 'cut')
    client.setQueryData<CutAnswers>(keys.cutAnswers, (known) => known && withCutState(known, push.state));
  if (push.kind === 'cutsFound')
    client.setQueryData<CutAnswers>(keys.cutAnswers, (known) => known && withFound(known, push));
  if (push.kind === 'search') client.setQueryData(keys.search, push.state);
  if (push.kind === 'ask') client.setQueryData([...keys.ask, push.state.jobId], push.state);
  if (push.kind === 'changes') takeChanges(client, push);
  if (push.kind === 'notice')
    for (const queryKey of [keys.status, keys.backups, keys.aside])
      void client.invalidateQueries({ queryKey });
}

/** Move the shop on by what the host tells, or read it again where something was missed. */
export function takeChanges(client: QueryClient, moved: Moved): void {
  const copy = client.getQueryData<ShopCopy>(keys.shop);
  const next = copy ? moveOn(copy, moved) : 'behind';
  if (next === 'behind') void client.invalidateQueries({ queryKey: keys.shop });
  else client.setQueryData(keys.shop, next);
  if (next === copy) return;
  void client.invalidateQueries({ queryKey: keys.history });
  void client.invalidateQueries({ queryKey: keys.plans });
  if (moved.changes === null || moved.changes.some(({ kind }) => kind === 'record'))
    void client.invalidateQueries({ queryKey: keys.records });
}

/** After the line to the host was cut: the shop is read again. Not the first time, when it is read anyway. */
export function missedSome(client: QueryClient): () => void {
  let first = true;
  return () => {
    if (!first) void client.invalidateQueries({ queryKey: keys.shop });
    first = false;
  };
}
