import { useEffect, useEffectEvent, useState } from 'react';
import type { Record as FloorRecord } from '../../../core/shop/plan.ts';
import { useCommand } from '../../queries/hooks.ts';
import { toastError } from '../../ui/toast.tsx';

export interface Counts {
  readonly good: number;
  readonly scrapped: number;
}

/** Presses that follow each other within this make one step of the history. */
const SETTLE_MS = 800;

/**
 * The pieces counted so far, kept a moment after the last press. `set` shows at once; `settle` drops what is not kept
 * yet, for a report that carries the counts itself.
 */
export function useCounts(record: FloorRecord) {
  const { mutate } = useCommand();
  const [typed, setTyped] = useState<(Counts & { readonly over: number }) | null>(null);
  // What was typed holds until the record changes under it, by its being kept or by someone else.
  const mine = typed?.over === record.revision ? typed : null;
  const counts: Counts = mine ?? record;
  const keep = useEffectEvent(({ good, scrapped }: Counts) =>
    mutate(
      { do: 'floor.count', operation: record.id, good, scrapped },
      {
        onError: (error) => {
          setTyped(null);
          toastError(error);
        },
      },
    ),
  );
  useEffect(() => {
    if (!mine || (mine.good === record.good && mine.scrapped === record.scrapped)) return;
    const timer = setTimeout(() => keep(mine), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [mine, record.good, record.scrapped]);
  return {
    counts,
    set: (patch: Partial<Counts>) =>
      setTyped({ good: counts.good, scrapped: counts.scrapped, ...patch, over: record.revision }),
    settle: () => setTyped(null),
  };
}
