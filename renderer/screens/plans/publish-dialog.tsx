import { Send } from 'lucide-react';
import { useState } from 'react';
import { MOST_OF_A_NAME } from '../../../core/edit/command.ts';
import { seenQueues } from '../../../core/edit/stale.ts';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { changedRows } from '../../../core/report/plan-words.ts';
import { inWorkOrder } from '../../../core/shop/machine.ts';
import { counted } from '../../../core/units/count.ts';
import { sayRefused } from '../../form/say-refused.ts';
import { useAct } from '../../form/use-act.ts';
import { useShop } from '../../queries/hooks.ts';
import { useUnpublished } from '../../queries/plans.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { ChangedList } from './changed-list.tsx';
import { usePlansView } from './plans-view.ts';
import styles from './plans.module.css';

/** What the floor and the paper will follow, machine by machine, before they do. */
export function PublishDialog({ onClose }: { onClose: () => void }) {
  const { data: shop } = useShop();
  const changes = useUnpublished();
  const act = useAct();
  const [note, setNote] = useState('');
  if (!shop) return null;
  const queues = completeQueues(shop, operationsOf(shop).operations);
  const publish = () => {
    onClose();
    void act({ do: 'plan.publish', note: note.trim(), seen: seenQueues(shop) }).catch((error: Error) =>
      sayRefused(error, { label: 'Look again', act: () => usePlansView.getState().ask('publish') }),
    );
  };
  return (
    <Dialog
      title="Publish the plan"
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" icon={Send} isDisabled={changes.size === 0} onPress={publish}>
          Publish
        </Button>
      }
    >
      <p>
        {changes.size === 0
          ? shop.settings.publishing === 'always'
            ? 'Every change reaches floor and paper at once in this shop, so there is nothing to publish. Settings have it otherwise.'
            : 'Floor and paper follow the plan on the board already.'
          : 'Floor screens, dispatch lists and step lists follow this plan from then on. Lists printed before are out of date.'}
      </p>
      <TextField
        label="Note"
        value={note}
        onChange={setNote}
        maxLength={MOST_OF_A_NAME}
        help="what for; may stay empty"
      />
      {inWorkOrder(shop.machine).flatMap(({ id, name }) => {
        const changed = changes.get(id);
        return changed
          ? [
              <section key={id} className={styles.machine} aria-label={`Changes on ${name}`}>
                <h3>{`${name} (${id}): ${counted(changed.length, 'change')}`}</h3>
                <ChangedList rows={changedRows(changed, queues[id] ?? [])} className={styles.changes ?? ''} />
              </section>,
            ]
          : [];
      })}
    </Dialog>
  );
}
