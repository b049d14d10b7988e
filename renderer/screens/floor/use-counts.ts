import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import { useCommand } from '../../queries/hooks.ts';
import { toastError } from '../../ui/toast.tsx';

export interface Counts {
  readonly good: number;
  readonly scrapped: number;
}

/** Presses that follow each other within this make one step of the history. */
const SETTLE_MS = 800;

/**
 * The pieces counted so far, kept a moment after the last press, or at once when the screen is left. `set` shows at once;
 * `keepThen` keeps what was pressed last before a report that does not carry the counts; `settle` drops it, for one that
 * does.
 */
export function useCounts(record: OperationRecord) {
  const { mutate } = useCommand();
  const [typed, setTyped] = useState<(Counts & { readonly over: number }) | null>(null);
  // What was typed holds until the record changes under it, by its being kept or by someone else.
  const mine = typed?.over === record.revision ? typed : null;
  const pending = mine && (mine.good !== record.good || mine.scrapped !== record.scrapped) ? mine : null;
  const counts: Counts = mine ?? record;
  const sent = useRef<Counts | null>(null);
  const keep = (these: Counts, then?: () => void) => {
    sent.current = these;
    const { good, scrapped } = these;
    mutate(
      { do: 'floor.count', operation: record.id, good, scrapped },
      {
        onSuccess: then,
        onError: (error) => {
          setTyped(null);
          toastError(error);
        },
      },
    );
  };
  // What is on its way already need not be sent twice.
  const isUnsent = (): boolean => pending !== null && sent.current !== pending;
  const keepPending = useEffectEvent(() => pending && isUnsent() && keep(pending));
  useEffect(() => {
    if (!pending) return;
    const timer = setTimeout(keepPending, SETTLE_MS);
    return () => clearTimeout(timer);
  }, [pending]);
  useEffect(() => () => void keepPending(), []);
  return {
    counts,
    set: (patch: Partial<Counts>) =>
      setTyped({ good: counts.good, scrapped: counts.scrapped, ...patch, over: record.revision }),
    keepThen: (then: () => void) => (pending && isUnsent() ? keep(pending, then) : then()),
    settle: () => setTyped(null),
  };
}
