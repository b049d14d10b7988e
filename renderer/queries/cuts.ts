import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import type { CutAnswers } from '../../core/contract/cuts.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { cutRuns, planQuickly, type RunCut } from '../../core/report/cutting.ts';
import type { PlanView } from '../../core/report/plan-view.ts';
import { good, type Result } from '../../core/shop/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { breathe } from './happened.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';
import { usePlan, type PlanQuery } from './plan.ts';

/** Runs that were planned before, so that an edit waits for those only that it changes. */
const planned = new Map<string, Result<CutPlan>>();
const REMEMBERED = 400;

/** A first answer here and at once; the host, which has more time, may have a better one. */
export function planHere(input: RunInput): Result<CutPlan> {
  const key = runKey(input);
  const known = planned.get(key);
  if (known) return known;
  if (planned.size >= REMEMBERED) planned.clear();
  const made = planQuickly(input);
  planned.set(key, made);
  return made;
}

const withAnswers =
  (answers: CutAnswers['answers']) =>
  (input: RunInput): Result<CutPlan> => {
    const made = planHere(input);
    const answer = answers.find(({ key }) => key === runKey(input));
    return made.ok && answer ? good(betterOf(made.value, answer.plan)) : made;
  };

interface CutsSoFar {
  readonly cuts: readonly RunCut[];
  /** No run is missing. */
  readonly whole: boolean;
}

/** @param tell what is planned so far: first the runs of the metal of the run that is opened, if one is */
async function planAll(
  shop: Shop,
  view: PlanView,
  answers: CutAnswers['answers'],
  opened: string | undefined,
  tell: (cuts: readonly RunCut[]) => void,
): Promise<CutsSoFar> {
  const solve = withAnswers(answers);
  const take = async (runs: Iterable<RunCut>, told: (cuts: readonly RunCut[]) => void): Promise<RunCut[]> => {
    const cuts: RunCut[] = [];
    let restedAt = performance.now();
    for (const cut of runs) {
      cuts.push(cut);
      if (performance.now() - restedAt < REST_AFTER_MS) continue;
      told([...cuts]);
      await breathe();
      restedAt = performance.now();
    }
    return cuts;
  };
  if (opened !== undefined) tell(await take(cutRuns(shop, view, solve, opened), nobody));
  const cuts = await take(cutRuns(shop, view, solve), opened === undefined ? tell : nobody);
  return { cuts, whole: true };
}

/** The screen draws again after so much work. */
const REST_AFTER_MS = 30;
const nobody = (): void => undefined;

const numbers = new WeakMap<object, number>();
let given = 0;
/** A number for an object, so that it can stand in a query's key. */
function numberOf(object: object | undefined): number {
  if (!object) return 0;
  const known = numbers.get(object) ?? ++given;
  numbers.set(object, known);
  return known;
}

export type CutsQuery =
  | Exclude<PlanQuery, { is: 'ready' }>
  | (Extract<PlanQuery, { is: 'ready' }> & { readonly cuts: readonly RunCut[] });

type CutsSoFarQuery = Exclude<PlanQuery, { is: 'ready' }> | (Extract<PlanQuery, { is: 'ready' }> & CutsSoFar);

/** What the host has worked out; kept up to date by its pushes. */
export const useCutAnswers = () =>
  useQuery({ queryKey: keys.cutAnswers, queryFn: () => invoke(contract.cutsRead, {}) });

/**
 * The runs on the shear as the plan stands, each with its sheets and steps, as many as are planned already.
 * @param opened a line of the run that is wanted first
 */
export function useCutsSoFar(opened?: string): CutsSoFarQuery {
  const query = usePlan();
  const { data: known, error: unknown } = useCutAnswers();
  const ready = query.is === 'ready' ? query : null;
  const answers = known?.answers;
  const { data, error } = useQuery<CutsSoFar>({
    queryKey: [...keys.cuts, numberOf(ready?.plan), numberOf(answers)],
    queryFn: ({ client, queryKey }) => {
      if (!ready || !answers) return Promise.reject(new Error('no plan'));
      return planAll(ready.shop, ready.plan, answers, opened, (cuts) => {
        // After an edit the runs as they were stand until all are planned again: a list that shrinks and grows is no help.
        const wholes = client.getQueriesData<CutsSoFar>({ queryKey: keys.cuts });
        if (!wholes.some(([, so]) => so?.whole))
          client.setQueryData<CutsSoFar>(queryKey, { cuts, whole: false });
      });
    },
    enabled: ready !== null && answers !== undefined,
    placeholderData: keepPreviousData,
    structuralSharing: false,
    gcTime: 10_000,
  });
  if (query.is !== 'ready') return query;
  const failed = unknown ?? error;
  if (failed) return { is: 'failed', message: failed.message };
  return data ? { ...query, ...data } : { is: 'waiting' };
}

/** Every run on the shear as the plan stands, when all are planned. */
export function useCuts(): CutsQuery {
  const query = useCutsSoFar();
  return query.is === 'ready' && !query.whole ? { is: 'waiting' } : query;
}

/** What is known after a push: the answers change only with a better one, so that nothing is planned again in vain. */
export function withCutState(known: CutAnswers, state: NonNullable<CutAnswers['state']>): CutAnswers {
  const { key, plan } = state;
  const before = known.answers.find((one) => one.key === key);
  const same =
    plan === null ||
    (before?.plan.costCents === plan.costCents &&
      before.plan.lowerBoundCents === plan.lowerBoundCents &&
      before.plan.areas.scrap === plan.areas.scrap &&
      before.plan.steps.length === plan.steps.length);
  if (same) return { ...known, state };
  return { state, answers: [...known.answers.filter((one) => one.key !== key), { key, plan }] };
}
