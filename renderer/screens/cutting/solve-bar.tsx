import { Search, Square } from 'lucide-react';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import type { MoneyStyle } from '../../../core/units/money.ts';
import { Button } from '../../ui/button.tsx';
import styles from './cutting.module.css';
import { useSolving } from './use-solving.ts';

/** The work on better sheets while it goes on; how near they are stands with their cost. */
export function SolveBar({ cut, money }: { cut: RunCut; money: MoneyStyle }) {
  const { running, seconds, message, more, stop } = useSolving(cut, money);
  if (!cut.plan.ok) return null;
  const canSearch = !running && cut.plan.value.status !== 'optimal' && cut.changed === null;
  if (!running && !canSearch && message === null) return null;
  return (
    <div className={styles.solving}>
      <span className={styles.soft} role="status">
        {[running ? `Searching for better sheets: ${seconds.toFixed(0)} s.` : null, message]
          .filter((words) => words !== null)
          .join(' ')}
      </span>
      {running && (
        <Button small icon={Square} onPress={stop}>
          Stop
        </Button>
      )}
      {canSearch && (
        <Button small icon={Search} onPress={more}>
          Keep searching
        </Button>
      )}
    </div>
  );
}
