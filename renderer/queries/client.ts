import { QueryClient } from '@tanstack/react-query';
import type { CutAnswers } from '../../core/contract/cuts.ts';
import type { Push } from '../../core/contract/push.ts';
import { withCutState } from './cuts.ts';
import { keys } from './keys.ts';

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
  if (push.kind === 'search') client.setQueryData(keys.search, push.state);
  if (push.kind === 'ask') client.setQueryData([...keys.ask, push.state.jobId], push.state);
  if (push.kind !== 'changed') return;
  void client.invalidateQueries({ queryKey: keys.shop });
  void client.invalidateQueries({ queryKey: keys.history });
  if (push.rows.includes('record')) void client.invalidateQueries({ queryKey: keys.records });
}
