import { formatDayAndClock } from '../../../core/time/wall.ts';
import { useHistory } from '../../queries/hooks.ts';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import styles from './settings.module.css';

/** What was done, newest first; undo and redo in the header walk along it. */
export function History({ timeZone }: { timeZone: string }) {
  const { data, error } = useHistory();
  const when = (at: number) => formatDayAndClock(at, timeZone);
  return (
    <section className={styles.panel}>
      <h2>What was done</h2>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Reading the history" />}
      {data && data.undo.length === 0 && data.redo.length === 0 && (
        <p className={styles.note}>Nothing yet.</p>
      )}
      {data && (
        <ol className={styles.history}>
          {data.redo.toReversed().map((step) => (
            <li key={step.id} className={styles.undone}>
              <span>{step.label}</span> <span className={styles.note}>{`${when(step.at)}, undone`}</span>
            </li>
          ))}
          {data.undo.map((step) => (
            <li key={step.id}>
              <span>{step.label}</span> <span className={styles.note}>{when(step.at)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
