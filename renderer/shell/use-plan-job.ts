import type { SearchState } from '../../core/contract/search.ts';
import { useSearch, useSearchStart, useSearchStop } from '../queries/hooks.ts';
import { storedChoice } from '../ui/stored-choice.ts';
import { toastError } from '../ui/toast.tsx';

/** How long the search may take, in seconds. */
export const planSeconds = storedChoice('foldweek.planSeconds', ['5', '20', '60', '300'], '20');

/** With what confidence, in percent, lines are to be on time; 'as estimated' plans by the times as they are estimated. */
export const planProtect = storedChoice(
  'foldweek.planProtect',
  ['as estimated', '80', '90', '95'],
  'as estimated',
);

/** The share such a choice asks for; null: none. */
export const protectShare = (chosen: string): number | null =>
  chosen === 'as estimated' ? null : Number(chosen) / 100;

/** The key that searches on from the best plan found, for as long again. */
export const KEEP_SEARCHING = 'G';

export interface PlanJob {
  readonly state: SearchState | null;
  readonly running: boolean;
  /** From the plan as it is: the first time, and again to keep searching from the best plan found. */
  readonly start: () => void;
  /** Stop; the best plan so far is kept. */
  readonly stop: () => void;
}

/** Each further click in one sitting draws other lots, so that it can find something new. */
let searchesStarted = 0;

export function usePlanJob(): PlanJob {
  const { data } = useSearch();
  const start = useSearchStart();
  const stop = useSearchStop();
  const state = data ?? null;
  const running = state?.phase === 'running' || start.isPending;
  return {
    state,
    running,
    start() {
      if (running) return;
      searchesStarted += 1;
      start.mutate(
        {
          seconds: Number(planSeconds.read()),
          seed: searchesStarted,
          protect: protectShare(planProtect.read()),
        },
        { onError: toastError },
      );
    },
    stop() {
      if (state?.phase === 'running') stop.mutate(state.jobId, { onError: toastError });
    },
  };
}
