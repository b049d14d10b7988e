import type { ListedPlan } from '../../../core/contract/plans.ts';
import { sumWords } from '../../../core/report/plan-words.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { Button } from '../../ui/button.tsx';
import { ColumnHeads } from '../../ui/column-heads.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './plans.module.css';
import { useGoBackTo } from './use-go-back-to.ts';

interface Props {
  plans: readonly ListedPlan[];
  timeZone: string;
  onCompare: (id: number) => void;
  /** The plan was taken back to: the board shows it. */
  onGone: () => void;
  /** Reads older ones; null when there are none. */
  onMore: (() => void) | null;
}

/** Who kept or published which plan when, and what it came to then. */
export function PlanList({ plans, timeZone, onCompare, onGone, onMore }: Props) {
  const goBackTo = useGoBackTo();
  if (plans.length === 0)
    return (
      <p className={styles.soft}>
        No plan is kept yet. Keep one before you try something: you can compare with it and go back to it.
      </p>
    );
  return (
    <>
      <table className={styles.table} aria-label="Kept and published plans">
        <thead>
          <tr>
            <ColumnHeads heads={['When', 'Plan', 'By', 'Came to', '']} />
          </tr>
        </thead>
        <tbody>
          {plans.map((plan) => {
            const title = plan.name || (plan.what === 'published' ? 'Published' : '');
            return (
              <tr key={plan.id}>
                <td>{formatDayAndClock(plan.at, timeZone)}</td>
                <th scope="row">
                  {title} {plan.what === 'published' && plan.name !== '' && <Tag>published</Tag>}
                  {plan.undone && <Tag look="warn">undone</Tag>}
                </th>
                <td className={styles.soft}>{plan.by}</td>
                <td>{plan.figures ? sumWords(plan.figures) : 'not known'}</td>
                <td className={styles.acts}>
                  <Button small aria-label={`Compare ${title}`} onPress={() => onCompare(plan.id)}>
                    Compare
                  </Button>
                  <Button small aria-label={`Go back to ${title}`} onPress={() => goBackTo(plan.id, onGone)}>
                    Go back
                  </Button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {onMore && <Button onPress={onMore}>Show older ones</Button>}
    </>
  );
}
