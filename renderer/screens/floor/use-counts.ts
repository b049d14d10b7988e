import type { OperationRecord } from '../../../core/shop/plan.ts';
import { useCommand } from '../../queries/hooks.ts';
import { toastError } from '../../ui/toast.tsx';

export interface Counts {
  readonly good: number;
  readonly scrapped: number;
}

/**
 * The pieces counted so far. Each press is kept at once, so that nothing is lost with the power, and as a difference to
 * what is shown, so that presses on two screens add up.
 */
export function useCounts(record: OperationRecord) {
  const { mutateAsync } = useCommand();
  const counts: Counts = { good: record.good, scrapped: record.scrapped };
  const set = (patch: Partial<Counts>) => {
    const by = countsBeyond({ ...counts, ...patch }, counts);
    if (by.good === 0 && by.scrapped === 0) return;
    void mutateAsync({ do: 'floor.count', operation: record.id, ...by }).catch(toastError);
  };
  return { counts, set };
}

/** How many more of each. */
export const countsBeyond = (made: Counts, counted: Counts): Counts => ({
  good: made.good - counted.good,
  scrapped: made.scrapped - counted.scrapped,
});
