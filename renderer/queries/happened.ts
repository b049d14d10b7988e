import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import { NEWEST_WORK, readBy, type Happened } from '../../core/learn/plan-chances.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Shop } from '../../core/shop/state.ts';
import { offThread } from '../compute/off-thread.ts';
import { useShop } from './hooks.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';
import { whenIdle } from './when-idle.ts';

/** What the newest finished operations say of times, and the operations themselves, latest start first. */
export interface FinishedWork extends Happened {
  readonly records: readonly OperationRecord[];
}

async function readHappened(shop: Shop): Promise<FinishedWork> {
  // Records are the largest answer of a start, and the plan is drawn without them.
  await whenIdle();
  const { records } = await invoke(contract.recordsRead, { before: null, limit: NEWEST_WORK });
  return { records, ...(await offThread('whatHappened', shop, records)) };
}

let basis: { of: readonly unknown[]; version: number } = { of: [], version: 0 };

/** A number that grows when something changed that work is read by; the host's answers keep rows that did not change the same objects. */
function versionOf(shop: Shop): number {
  const of = readBy(shop);
  if (of.some((rows, i) => rows !== basis.of[i])) basis = { of, version: basis.version + 1 };
  return basis.version;
}

/** Finished work as learning sees it; the older answer stands until a newer one is there. */
export function useHappened() {
  const { data: shop } = useShop();
  return useQuery({
    queryKey: [...keys.records, 'happened', shop ? versionOf(shop) : 0],
    queryFn: shop ? () => readHappened(shop) : () => Promise.reject(new Error('no shop')),
    enabled: shop !== undefined,
    placeholderData: keepPreviousData,
    structuralSharing: false,
  });
}
