import { Play, Square } from 'lucide-react';
import { counted } from '../../../core/units/count.ts';
import { useImproving } from '../../queries/cuts.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import { toastError } from '../../ui/toast.tsx';
import styles from './cutting.module.css';

/** All runs are worked on while nobody asks for anything else: how far that is, and a way to stop it. */
export function ImprovingBar() {
  const { improving, improve } = useImproving();
  if (improving?.phase === 'stopped')
    return (
      <div className={classes(styles.solving, styles.onTop)}>
        <span className={styles.soft} role="status">
          Runs that nobody opened are not worked on.
        </span>
        <Button small icon={Play} onPress={() => improve(true, { onError: toastError })}>
          Work on all runs
        </Button>
      </div>
    );
  if (improving?.phase !== 'running' || improving.left === 0) return null;
  return (
    <div className={classes(styles.solving, styles.onTop)}>
      <span className={styles.soft} role="status">
        {`Searching for better sheets for all runs: ${counted(improving.left, 'run')} left`}
      </span>
      <Button small icon={Square} onPress={() => improve(false, { onError: toastError })}>
        Stop
      </Button>
    </div>
  );
}
