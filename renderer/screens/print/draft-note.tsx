import { useUnpublished } from '../../queries/plans.ts';
import styles from './print.module.css';

/** Above a paper that follows the plan published last, where the board shows another: said on screen, not printed. */
export function DraftNote() {
  const { size } = useUnpublished();
  if (size === 0) return null;
  return (
    <p className={styles.draft} role="status">
      ◆ This follows the plan published last. What was changed on the board since is not in it; publish it
      first if it should be.
    </p>
  );
}
