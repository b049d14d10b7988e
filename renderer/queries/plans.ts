import {
  keepPreviousData,
  useInfiniteQuery,
  useMutation,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import type { DoneBefore, WhichPlan } from '../../core/contract/plans.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import { unpublishedChanges, type QueueChanges } from '../../core/planning/changed-queues.ts';
import type { Shop } from '../../core/shop/state.ts';
import { takeChanges } from './client.ts';
import { useShop } from './hooks.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';
import type { ShopCopy } from './shop-copy.ts';

const PAGE = 30;

/** Plans kept and published, newest first, page by page. */
export const usePlans = () =>
  useInfiniteQuery({
    queryKey: [...keys.plans, 'list'],
    queryFn: ({ pageParam }) => invoke(contract.plansList, { before: pageParam, limit: PAGE }),
    initialPageParam: null as number | null,
    getNextPageParam: ({ plans, more }) => (more ? (plans.at(-1)?.id ?? null) : null),
    staleTime: 0,
  });

/** What was done at desk and floor, newest first, page by page. */
export const useStory = () =>
  useInfiniteQuery({
    queryKey: [...keys.plans, 'story'],
    queryFn: ({ pageParam }) => invoke(contract.historyRead, { before: pageParam, limit: PAGE }),
    initialPageParam: null as DoneBefore | null,
    getNextPageParam: ({ next }) => next,
    staleTime: 0,
  });

/** The plan that floor and paper follow, and the one before it. */
export const usePublished = () =>
  useQuery({
    queryKey: [...keys.plans, 'published'],
    queryFn: () => invoke(contract.plansPublished, {}),
  });

/** Two plans side by side. */
export const useCompared = (a: WhichPlan, b: WhichPlan) =>
  useQuery({
    queryKey: [...keys.plans, 'compared', a, b],
    queryFn: () => invoke(contract.plansCompare, { a, b }),
    staleTime: 0,
    placeholderData: keepPreviousData,
  });

/** Keep the plan as it stands, under a name. */
export function useKeepPlan() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (name: string) => invoke(contract.plansKeep, { name }),
    onSuccess: () => client.invalidateQueries({ queryKey: keys.plans }),
  });
}

/** Make a kept plan the one on the board. */
export function useGoBack() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (id: number) => {
      const shop = client.getQueryData<ShopCopy>(keys.shop)?.shop;
      return invoke(contract.plansGoBack, { id, seen: shop ? seenQueues(shop) : {} });
    },
    onSuccess: (moved) => moved.changes.length > 0 && takeChanges(client, moved),
  });
}

const changes = new WeakMap<Shop, QueueChanges>();
const none: QueueChanges = new Map();

/** What publishing would change, by machine; nothing where every change is published at once. */
export function useUnpublished(): QueueChanges {
  const { data: shop } = useShop();
  if (!shop) return none;
  const known = changes.get(shop) ?? unpublishedChanges(shop);
  changes.set(shop, known);
  return known;
}
