import { keepPreviousData, skipToken, useMutation, useQuery } from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import type { RunCut } from '../../core/planning/cut-run.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';
import { useFollowedPlan, usePlan, type PlanQuery } from './plan.ts';
import { numberOf } from './number-of.ts';
import { planAll } from './plan-runs.ts';

const nobody = (): void => undefined;

/** The plan with all its runs cut. */
export type ReadyCuts = Extract<PlanQuery, { is: 'ready' }> & { readonly cuts: readonly RunCut[] };
export type CutsQuery = Exclude<PlanQuery, { is: 'ready' }> | ReadyCuts;

export type CutsSoFarQuery =
  | Exclude<PlanQuery, { is: 'ready' }>
  | (ReadyCuts & {
      /** No run is missing. */
      readonly whole: boolean;
    });

/** What the host has worked out; kept up to date by its pushes. */
export const useCutAnswers = () =>
  useQuery({ queryKey: keys.cutAnswers, queryFn: () => invoke(contract.cutsRead, {}) });

/** The work on all runs while the app is idle, and the one switch of it. */
export function useImproving() {
  const { data, error } = useCutAnswers();
  const improve = useMutation({ mutationFn: (on: boolean) => invoke(contract.cutsImprove, { on }) });
  return { improving: data?.improving, error, improve: improve.mutate };
}

/**
 * The runs on the shear as the plan stands, each with its sheets and steps, as many as are planned already; after an edit
 * as they were until all are planned again, for a list that shrinks and grows is no help.
 * @param opened a line of the run that is wanted first
 */
export const useCutsSoFar = (opened?: string): CutsSoFarQuery => useCutsOf(usePlan(), opened);

/** The same of the plan that floor and paper follow. */
export const useFollowedCutsSoFar = (opened?: string): CutsSoFarQuery => useCutsOf(useFollowedPlan(), opened);

function useCutsOf(query: PlanQuery, opened?: string): CutsSoFarQuery {
  const { data: known, error: unknown } = useCutAnswers();
  const ready = query.is === 'ready' ? query : null;
  const answers = known?.answers;
  const by = [numberOf(ready?.plan), numberOf(answers)];
  const soFarKey = [...keys.cutsSoFar, ...by];
  const { data: cuts, error } = useQuery<readonly RunCut[]>({
    queryKey: [...keys.cuts, ...by],
    queryFn: ({ client, signal }) => {
      if (!ready || !answers) return Promise.reject(new Error('no plan'));
      // With better sheets for the same plan, what was whole is shown until it is whole again.
      const known = client.getQueriesData<readonly RunCut[]>({ queryKey: [...keys.cuts, by[0]] });
      const isShown = known.some(([, data]) => data !== undefined);
      const tell = (some: readonly RunCut[]) => void client.setQueryData(soFarKey, some);
      const { shop, plan: view } = ready;
      return planAll({ shop, view, answers, opened, signal, tell: isShown ? nobody : tell });
    },
    enabled: ready !== null && answers !== undefined,
    placeholderData: keepPreviousData,
    structuralSharing: false,
    gcTime: 10_000,
  });
  const { data: soFar } = useQuery<readonly RunCut[]>({
    queryKey: soFarKey,
    queryFn: skipToken,
    structuralSharing: false,
    gcTime: 10_000,
  });
  if (query.is !== 'ready') return query;
  const failed = unknown ?? error;
  if (failed) return { is: 'failed', message: failed.message };
  if (cuts) return { ...query, cuts, whole: true };
  return { ...query, cuts: soFar ?? [], whole: false };
}

/** Every run on the shear, when all are planned. */
export const useCuts = (): CutsQuery => whole(useCutsSoFar());

/** The same of the plan that floor and paper follow. */
export const useFollowedCuts = (): CutsQuery => whole(useFollowedCutsSoFar());

const whole = (query: CutsSoFarQuery): CutsQuery =>
  query.is === 'ready' && !query.whole ? { is: 'waiting' } : query;
