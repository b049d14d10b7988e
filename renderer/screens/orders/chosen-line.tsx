import { CalendarRange, Pencil, Split, Zap } from 'lucide-react';
import { useState } from 'react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useBoardView } from '../../gantt/view.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import { FarChance } from '../../ui/far-chance.tsx';
import { askRush } from '../what-if/what-if-view.ts';
import type { LineRow } from './line-rows.ts';
import { SplitDialog } from './split-dialog.tsx';
import { WholeOrder } from './whole-order.tsx';
import styles from './orders.module.css';

interface Props {
  shop: Shop;
  row: LineRow | null;
  plan: Pick<PlanView, 'schedule'> | null;
  onOpen: (row: LineRow) => void;
}

/** The line the keyboard is on and its work order: what stands against them, and the ways on from here. */
export function ChosenLine({ shop, row, plan, onOpen }: Props) {
  if (row === null)
    return (
      <p className={styles.chosenLine}>
        Arrow keys move, Enter changes a cell or opens the order, a click on a heading sorts.
      </p>
    );
  return (
    <div>
      <OneLine key={row.id} {...{ shop, row, plan, onOpen }} />
      <WholeOrder shop={shop} order={row.order} plan={plan} />
    </div>
  );
}

function OneLine({ shop, row, plan, onOpen }: Props & { row: LineRow }) {
  const [splitting, setSplitting] = useState(false);
  const steps = plan?.schedule.operations.filter((o) => o.job === row.id) ?? [];
  const operation = steps.toSorted((a, b) => a.start - b.start)[0]?.operation ?? null;
  const show = () => {
    useBoardView.getState().select(operation);
    navigate('board');
  };
  const words = row.trouble ?? row.terms.notes.join(' · ');
  return (
    <div className={styles.chosenLine}>
      <span>
        <strong>{row.id}</strong> {row.order.customer}, {row.partName}, {row.progress}
      </span>
      <span className={classes(styles.chosenWords, row.trouble ? styles.warning : styles.soft)}>{words}</span>
      {row.onTime !== null && <FarChance share={row.onTime} late={(row.lateness ?? 0) > 0} />}
      <span className={styles.ways}>
        <Button small icon={Pencil} onPress={() => onOpen(row)}>
          Open work order
        </Button>
        <Button small icon={Split} onPress={() => setSplitting(true)}>
          Split…
        </Button>
        {row.order.rush && row.current === 'open' && (
          <Button small icon={Zap} onPress={() => askRush([row.id])} isDisabled={operation === null}>
            Rush…
          </Button>
        )}
        <Button small icon={CalendarRange} onPress={show} isDisabled={operation === null}>
          Show on the board
        </Button>
      </span>
      {splitting && (
        <SplitDialog shop={shop} line={row.line} order={row.order} onClose={() => setSplitting(false)} />
      )}
    </div>
  );
}
