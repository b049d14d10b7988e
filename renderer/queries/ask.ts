import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query';
import type { AskState } from '../../core/contract/ask.ts';
import { contract } from '../../core/contract/index.ts';
import type { PlanView } from '../../core/planning/plan-view.ts';
import type { Outage } from '../../core/shop/outage.ts';
import type { Shop } from '../../core/shop/state.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';
import { numberOf } from './number-of.ts';

/** How long everything may be planned again around a rush. */
const RUSH_SECONDS = 2;
/** How long a repair may be searched. */
const REPAIR_SECONDS = 5;
const SEED = 1;

/** Why a line ends when it does, asked again whenever the plan is another. */
export const useWhy = (lineId: string, plan: PlanView) =>
  useQuery({
    queryKey: [...keys.why, numberOf(plan), lineId],
    queryFn: () => invoke(contract.askWhy, { lineId }),
    gcTime: 10_000,
  });

/** The ways to take rush lines in, asked again whenever the shop is another. The third follows under `jobId`. */
export const useRushWays = (lineIds: readonly string[], intoFrozen: boolean, shop: Shop) =>
  useQuery({
    queryKey: [...keys.rush, numberOf(shop), intoFrozen, ...lineIds],
    queryFn: () => invoke(contract.askRush, { lineIds, intoFrozen, seconds: RUSH_SECONDS, seed: SEED }),
    enabled: lineIds.length > 0,
    gcTime: 0,
  });

/** The repairs after hours out of service, one of them of at most so many moves; they follow under `jobId`. */
export const useRepair = (outage: Outage, most: number, shop: Shop) =>
  useQuery({
    queryKey: [...keys.repair, numberOf(shop), outage.kind, outage.id, most],
    queryFn: () => invoke(contract.askRepair, { outage, most, seconds: REPAIR_SECONDS, seed: SEED }),
    gcTime: 0,
  });

/** Dates that can be promised. @param question a PromiseQuestion as JSON, "null": nothing to ask */
export const usePromise = (question: string, shop: Shop) =>
  useQuery({
    queryKey: [...keys.promise, numberOf(shop), question],
    queryFn: ({ signal }) => {
      const jobId = crypto.randomUUID();
      signal.addEventListener('abort', () => stopAsking(jobId));
      const asked = contract.askPromise.input.omit({ jobId: true }).parse(JSON.parse(question));
      return invoke(contract.askPromise, { ...asked, jobId });
    },
    enabled: question !== 'null',
    placeholderData: question === 'null' ? undefined : keepPreviousData,
    gcTime: 10_000,
  });

/** Where a longer question stands: read once, then told by pushes. Null while it is not known, or superseded. */
export function useAskState(jobId: string | undefined): AskState | null {
  const client = useQueryClient();
  const queryKey = [...keys.ask, jobId];
  const { data } = useQuery({
    queryKey,
    queryFn: async () => {
      const read = await invoke(contract.askRead, { jobId: jobId ?? '' });
      // What was pushed while this was on its way is newer.
      return client.getQueryData<AskState>(queryKey) ?? read;
    },
    enabled: jobId !== undefined,
    gcTime: 10_000,
  });
  return data ?? null;
}

/** Nobody waits for the answer any more. One that is over already is left alone. */
export const stopAsking = (jobId: string | undefined): void => {
  if (jobId !== undefined) void invoke(contract.askStop, { jobId }).catch(() => undefined);
};
