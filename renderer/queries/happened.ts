import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import { changeoversOf, observationsOf } from '../../core/estimate/learn/happened.ts';
import type { ChangeoverObservation } from '../../core/estimate/learn/learn-changeover.ts';
import type { Observation } from '../../core/estimate/learn/observation.ts';
import type { Record as FloorRecord } from '../../core/shop/plan.ts';
import type { Shop } from '../../core/shop/state.ts';
import { useShop } from './hooks.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';

/** What the newest finished operations say of times. */
export interface Happened {
  /** Latest start first. */
  readonly records: readonly FloorRecord[];
  readonly observations: readonly Observation[];
  readonly changeovers: readonly ChangeoverObservation[];
  /** Finished operations that the shop as it is now cannot estimate. */
  readonly left: number;
}

/** Older work says little of the machines as they are now; the contract hands out no more at once. */
const NEWEST = 5000;
/** Read so many at a time, so that the screen never stands still for long. */
const AT_ONCE = 150;

/** Let the screen draw. */
export const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

async function readHappened(shop: Shop): Promise<Happened> {
  const { records } = await invoke(contract.recordsRead, { before: null, limit: NEWEST });
  const observations: Observation[] = [];
  let left = 0;
  for (let at = 0; at < records.length; at += AT_ONCE) {
    await breathe();
    const some = observationsOf(shop, records.slice(at, at + AT_ONCE));
    observations.push(...some.observations);
    left += some.left.length;
  }
  await breathe();
  return { records, observations, changeovers: changeoversOf(shop, records), left };
}

/** What an estimate is made from; the host's answers keep rows that did not change the same objects. */
const basisOf = ({ machine, part, material, sheet, calendar, downtime, settings }: Shop) => [
  machine,
  part,
  material,
  sheet,
  calendar,
  downtime,
  settings,
];
let basis: { of: readonly unknown[]; version: number } = { of: [], version: 0 };

/** A number that grows when something changed that estimates are made from. */
function versionOf(shop: Shop): number {
  const of = basisOf(shop);
  if (of.some((rows, i) => rows !== basis.of[i])) basis = { of, version: basis.version + 1 };
  return basis.version;
}

/** Finished work as learning sees it, read piece by piece; the older answer stands until a newer one is there. */
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
