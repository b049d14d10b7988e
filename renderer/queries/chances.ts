import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { spreadOf, timedOf } from '../../core/estimate/learn/spread.ts';
import type { PlanView } from '../../core/report/plan-view.ts';
import { chances, type Chances } from '../../core/schedule/chance.ts';
import type { Shop } from '../../core/shop/state.ts';
import { breathe, useHappened, type Happened } from './happened.ts';
import { keys } from './keys.ts';
import { numberOf } from './number-of.ts';
import { usePlan } from './plan.ts';

/** Enough that a chance is true to about two percent; some fifty milliseconds on a shop of 160 lines. */
const RUNS = 500;
const SEED = 1;

async function playThrough(shop: Shop, plan: PlanView, happened: Happened): Promise<Chances | null> {
  await breathe();
  const spread = spreadOf(timedOf(shop, happened.observations));
  if (!spread.ok) return null;
  await breathe();
  const played = chances(plan.problem, plan.queues, spread.value, { runs: RUNS, seed: SEED });
  return played.ok ? played.value : null;
}

/** The chance of each line to be on time, by line id; null while it is not known, or with too little finished work. */
export function useChances(): Chances | null {
  const query = usePlan();
  const { data: happened } = useHappened();
  const ready = query.is === 'ready' ? query : undefined;
  const { data } = useQuery({
    queryKey: [...keys.chances, numberOf(ready?.plan), numberOf(happened)],
    queryFn:
      ready && happened
        ? () => playThrough(ready.shop, ready.plan, happened)
        : () => Promise.reject(new Error('no plan')),
    enabled: ready !== undefined && happened !== undefined,
    placeholderData: keepPreviousData,
    structuralSharing: false,
    gcTime: 10_000,
  });
  return data ?? null;
}
