import { useImproving } from '../../queries/cuts.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { toastError } from '../../ui/toast.tsx';
import styles from './settings.module.css';

/** Whether this machine works on all runs while nobody asks for anything; the same switch as the Cutting screen's. */
export function IdleCutting() {
  const { improving, error, improve } = useImproving();
  return (
    <section className={styles.panel}>
      <h2>While the app is idle</h2>
      {error && <SentenceError message={error.message} />}
      <CheckBox
        label="Search for better sheets for all runs"
        isSelected={improving !== undefined && improving.phase !== 'stopped'}
        isDisabled={improving === undefined}
        onChange={(on) => improve(on, { onError: toastError })}
      />
      <p className={styles.note}>
        It begins when nothing was asked for a while, takes what no other program needs, and ends at the next
        change. Off, only runs that are opened are worked on. Kept beside the data file, at once.
      </p>
    </section>
  );
}
