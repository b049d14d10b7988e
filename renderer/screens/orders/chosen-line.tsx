import { CalendarRange, Pencil, Zap } from 'lucide-react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { useBoardView } from '../../gantt/view.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import { FarChance } from '../../ui/far-chance.tsx';
import { askRush } from '../what-if/what-if-view.ts';
import type { LineRow } from './line-rows.ts';
import styles from './orders.module.css';

interface Props {
  row: LineRow | null;
  plan: Pick<PlanView, 'schedule'> | null;
  onOpen: (row: LineRow) => void;
}

/** The line the keyboard is on: what stands against it, and the ways on from here. */
export function ChosenLine({ row, plan, onOpen }: Props) {
  if (row === null)
    return (
      <p className={styles.chosenLine}>
        Arrow keys move, Enter changes a cell or opens the order, a click on a heading sorts.
      </p>
    );
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
        <strong>{row.id}</strong> {row.order.customer}, {row.partName}
      </span>
      <span className={classes(styles.chosenWords, row.trouble ? styles.warning : styles.soft)}>{words}</span>
      {row.onTime !== null && <FarChance share={row.onTime} late={(row.lateness ?? 0) > 0} />}
      <span className={styles.ways}>
        <Button small icon={Pencil} onPress={() => onOpen(row)}>
          Open work order
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
    </div>
  );
}
