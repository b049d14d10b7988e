import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { PromiseAnswer } from '../../core/contract/ask.ts';
import type { TypedOrder } from '../../core/report/typed-chances.ts';
import type { Chances } from '../../core/learn/chance.ts';
import type { Result } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { offThread } from '../compute/off-thread.ts';
import { useHappened } from './happened.ts';
import { useNow } from './hooks.ts';
import { keys } from './keys.ts';
import { numberOf } from './number-of.ts';
import { usePlan } from './plan.ts';

const known = (found: Result<Chances>): Chances | null => (found.ok ? found.value : null);

/** How times lie about estimates; null while it is not known, or with too little finished work. */
function useSpread() {
  const spread = useHappened().data?.spread;
  return spread?.ok ? spread.value : null;
}

/** The chance of each line to be on time, by line id; null while it is not known, or with too little finished work. */
export function useChances(): Chances | null {
  const query = usePlan();
  const spread = useSpread();
  const ready = query.is === 'ready' ? query : null;
  const { data } = useQuery({
    queryKey: [...keys.chances, numberOf(ready?.plan), numberOf(spread ?? undefined)],
    queryFn: async () => known(await offThread('planChances', ready!.shop, ready!.now, spread!)),
    enabled: ready !== null && spread !== null,
    placeholderData: keepPreviousData,
    structuralSharing: false,
    gcTime: 10_000,
  });
  return data ?? null;
}

/** The chances of an order's lines while it is typed, each in the place it was offered; null as above. */
export function useTypedChances(
  question: Omit<TypedOrder, 'plans'> | null,
  answer: PromiseAnswer | undefined,
  shop: Shop,
): Chances | null {
  const spread = useSpread();
  const now = useNow();
  const plans = Object.fromEntries(
    (answer?.lines ?? []).flatMap(({ lineId, safe }) => (safe ? [[lineId, safe.queues] as const] : [])),
  );
  const { data } = useQuery({
    queryKey: [...keys.chances, 'typed', numberOf(answer), numberOf(spread ?? undefined)],
    queryFn: async () => known(await offThread('typedChances', shop, now, spread!, { ...question!, plans })),
    enabled: question !== null && spread !== null && Object.keys(plans).length > 0,
    structuralSharing: false,
    gcTime: 10_000,
  });
  return data ?? null;
}
