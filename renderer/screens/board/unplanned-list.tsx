import type { Issue } from '../../../core/result.ts';
import { placeOf } from '../../router.ts';
import { EmptyState } from '../../ui/states.tsx';
import styles from './board.module.css';

const orderOf = (subject: string): string | null => /^line ([^/]+)\//.exec(subject)?.[1] ?? null;

/** Open lines that stand in no queue, each with its reason and what to do. */
export function UnplannedList({ issues }: { issues: readonly Issue[] }) {
  if (issues.length === 0) return <EmptyState title="Every open line is on the board" />;
  return (
    <ul className={styles.unplanned}>
      {issues.map((problem, i) => {
        const order = orderOf(problem.subject);
        return (
          <li key={`${problem.subject} ${problem.field} ${i}`}>
            <p>
              <b>◆ </b>
              {problem.message}
            </p>
            <p className={styles.advice}>
              {problem.advice} {order && <a href={placeOf('orders', order)}>Open work order {order}</a>}
            </p>
          </li>
        );
      })}
    </ul>
  );
}
