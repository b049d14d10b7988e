import { Zap } from 'lucide-react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { orderStanding } from '../../../core/report/order-standing.ts';
import type { WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import { openLines } from '../what-if/rush-facts.ts';
import { askRush } from '../what-if/what-if-view.ts';
import styles from './orders.module.css';

interface Props {
  shop: Shop;
  order: WorkOrder;
  plan: Pick<PlanView, 'schedule'> | null;
}

/** How far the whole work order is, one date for all of it against its promise, and the question whether it can be sooner. */
export function WholeOrder({ shop, order, plan }: Props) {
  const { progress, date, late } = orderStanding(shop, order, plan?.schedule ?? null);
  const movable = openLines(shop, ({ id }) => id === order.id);
  return (
    <div className={styles.chosenLine} role="group" aria-label={`Work order ${order.id}`}>
      <span>
        <strong>{`Work order ${order.id}`}</strong> {progress}
      </span>
      <span className={classes(styles.chosenWords, late && styles.warning)}>{date}</span>
      <span className={styles.ways}>
        <Button
          small
          icon={Zap}
          onPress={() => askRush(movable)}
          isDisabled={plan === null || movable.length === 0}
        >
          Can it be sooner?
        </Button>
      </span>
    </div>
  );
}
