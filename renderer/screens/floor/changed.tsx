import { Check } from 'lucide-react';
import { changedRows } from '../../../core/report/plan-words.ts';
import { counted } from '../../../core/units/count.ts';
import type { FloorView } from '../../../core/report/floor.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { Button } from '../../ui/button.tsx';
import { ChangedList } from '../plans/changed-list.tsx';
import styles from './changed.module.css';
import { useChangesHere } from './seen-plan.ts';

/**
 * What a newly published plan changed for this machine, until someone here has seen it. It stands above the card, which
 * gives way from above: the buttons at its foot stay where they are.
 */
export function Changed({ shop, view: { machine, queue } }: { shop: Shop; view: FloorView }) {
  const { changes, seen } = useChangesHere(shop, machine.id);
  if (changes.length === 0) return null;
  const ids = queue.map(({ operation }) => operation.id);
  return (
    <section className={styles.changed} aria-label="Changed in the plan">
      <h2>{`The plan was published anew: ${counted(changes.length, 'change')} here`}</h2>
      <ChangedList rows={changedRows(changes, ids)} className={styles.rows ?? ''} />
      <Button icon={Check} onPress={seen}>
        Seen
      </Button>
    </section>
  );
}
