import { useEffect } from 'react';
import { z } from 'zod';
import { changesSince, type QueueChange } from '../../../core/planning/changed-queues.ts';
import { publishedQueues } from '../../../core/planning/followed-plan.ts';
import type { Queues } from '../../../core/schedule/problem.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { kept, type Kept } from './kept.ts';

const queuesText = z.record(z.string(), z.array(z.string()));
const byMachine = new Map<string, Kept>();

/** The published plan that was looked at last on a machine's screen here. */
function seenAt(machineId: string): Kept {
  const known = byMachine.get(machineId) ?? kept(`foldweek.floor.seen.${machineId}`);
  byMachine.set(machineId, known);
  return known;
}

/** Null where nothing was looked at yet, or what was kept cannot be read. */
function queuesIn(text: string | null): Queues | null {
  try {
    const read = queuesText.safeParse(JSON.parse(text ?? ''));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** What changed in the published plan since someone at this screen looked; nothing where every change is published at once. */
export function useChangesHere(
  shop: Shop,
  machineId: string,
): { readonly changes: readonly QueueChange[]; readonly seen: () => void } {
  const store = seenAt(machineId);
  const before = queuesIn(store.use());
  const byHand = shop.settings.publishing === 'byHand';
  const seen = () => store.write(JSON.stringify(publishedQueues(shop)));
  const begins = byHand && before === null;
  // A screen that opens for the first time has the plan before it: from here on changes are told.
  useEffect(() => {
    if (begins) seen();
  });
  return {
    changes: byHand && before ? (changesSince(shop, before).get(machineId) ?? []) : [],
    seen,
  };
}
