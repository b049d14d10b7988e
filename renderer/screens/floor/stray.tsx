import { CircleAlert } from 'lucide-react';
import { operationName } from '../../../core/edit/plan-commands.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/states.tsx';
import { CountFields } from './count-field.tsx';
import { useCounts } from './use-counts.ts';
import { useFloor } from './use-floor.ts';

/** Work under way that is no longer in the plan: its order was held or cancelled, or the line cannot be planned. */
export function Stray({ record, who }: { record: OperationRecord; who: string }) {
  const { counts, set, settle } = useCounts(record);
  const floor = useFloor(record.id, who);
  const missing = record.quantity - counts.good - counts.scrapped;
  return (
    <EmptyState icon={CircleAlert} title={`${operationName(record.id)} is under way, but not in the plan`}>
      <p>
        Its order was held or cancelled, or its line was changed, after it was started. Ask the planner; then
        count its {record.quantity} pieces and report it done.
      </p>
      <CountFields pieces={record.quantity} counts={counts} set={set} />
      <Button
        look="primary"
        isDisabled={missing > 0}
        onPress={() => {
          settle();
          floor.done(counts, null);
        }}
      >
        {missing > 0 ? `${missing} pieces are not counted` : 'Done'}
      </Button>
    </EmptyState>
  );
}
