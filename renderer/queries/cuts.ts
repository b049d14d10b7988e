import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { CutPlan } from '../../core/cutting/plan.ts';
import type { RunInput } from '../../core/cutting/run.ts';
import { cutRuns, planQuickly, type RunCut } from '../../core/report/cutting.ts';
import type { PlanView } from '../../core/report/plan-view.ts';
import type { Result } from '../../core/shop/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { breathe } from './happened.ts';
import { keys } from './keys.ts';
import { usePlan, type PlanQuery } from './plan.ts';

/** Runs that were planned before, so that an edit waits for those only that it changes. */
const planned = new Map<string, Result<CutPlan>>();
const REMEMBERED = 400;

function plan(input: RunInput): Result<CutPlan> {
  const key = JSON.stringify(input);
  const known = planned.get(key);
  if (known) return known;
  if (planned.size >= REMEMBERED) planned.clear();
  const made = planQuickly(input);
  planned.set(key, made);
  return made;
}

async function planAll(shop: Shop, view: PlanView): Promise<RunCut[]> {
  const cuts: RunCut[] = [];
  let restedAt = performance.now();
  for (const cut of cutRuns(shop, view, plan)) {
    cuts.push(cut);
    if (performance.now() - restedAt < REST_AFTER_MS) continue;
    await breathe();
    restedAt = performance.now();
  }
  return cuts;
}

/** The screen draws again after so much work. */
const REST_AFTER_MS = 30;

const numbers = new WeakMap<PlanView, number>();
let given = 0;
function numberOf(view: PlanView): number {
  const known = numbers.get(view) ?? ++given;
  numbers.set(view, known);
  return known;
}

export type CutsQuery =
  | Exclude<PlanQuery, { is: 'ready' }>
  | (Extract<PlanQuery, { is: 'ready' }> & { readonly cuts: readonly RunCut[] });

/** Every run on the shear as the plan stands, each with its sheets and steps. */
export function useCuts(): CutsQuery {
  const query = usePlan();
  const ready = query.is === 'ready' ? query : null;
  const { data: cuts, error } = useQuery({
    queryKey: [...keys.cuts, ready ? numberOf(ready.plan) : 0],
    queryFn: ready ? () => planAll(ready.shop, ready.plan) : () => Promise.reject(new Error('no plan')),
    enabled: ready !== null,
    placeholderData: keepPreviousData,
    structuralSharing: false,
    gcTime: 10_000,
  });
  if (query.is !== 'ready') return query;
  if (error) return { is: 'failed', message: error.message };
  return cuts ? { ...query, cuts } : { is: 'waiting' };
}
