import { CircleAlert } from 'lucide-react';
import { operationName } from '../../../core/edit/plan-commands.ts';
import { wantedOf } from '../../../core/edit/wanted.ts';
import { lineOfOperation } from '../../../core/shop/order.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/states.tsx';
import { CountFields } from './count-field.tsx';
import { useCounts } from './use-counts.ts';
import { useFloor } from './use-floor.ts';

/** Work under way that is no longer in the plan: its order was held or cancelled, or the line cannot be planned. */
export function Stray({ shop, record, who }: { shop: Shop; record: OperationRecord; who: string }) {
  const { counts, set } = useCounts(record);
  const floor = useFloor(record.id, who);
  const line = shop.line.find(({ id }) => id === lineOfOperation(record.id));
  const wanted = wantedOf(shop, line);
  const pieces = Math.max(line?.quantity ?? record.quantity, counts.good);
  const missing = wanted === 'not' ? 0 : pieces - counts.good - counts.scrapped;
  return (
    <EmptyState icon={CircleAlert} title={`${operationName(record.id)} is under way, but not in the plan`}>
      <p>{WORDS[wanted](pieces)}</p>
      <CountFields pieces={pieces} counts={counts} set={set} />
      {wanted === 'later' && (
        <Button look="primary" onPress={() => floor.leave('The work order is held', record)}>
          Suspend
        </Button>
      )}
      <Button
        look={wanted === 'later' ? 'usual' : 'primary'}
        isDisabled={missing > 0}
        onPress={() => floor.done({ good: 0, scrapped: 0 }, null)}
      >
        {missing > 0 ? `${missing} pieces are not counted` : 'Done'}
      </Button>
    </EmptyState>
  );
}

/** Why it is not in the plan, and what to do. */
const WORDS: Readonly<Record<ReturnType<typeof wantedOf>, (pieces: number) => string>> = {
  now: (pieces) =>
    `Its line cannot be planned since it was started. Ask the planner; then count its ${pieces} pieces and report it done.`,
  later: () =>
    'Its work order was held after it was started. Count what is made, then suspend it: the rest waits until the order is opened again.',
  not: () =>
    'Its work order or line was cancelled or closed after it was started. Count what is made, then report it done: those pieces stay on record, and nothing more is made.',
};
