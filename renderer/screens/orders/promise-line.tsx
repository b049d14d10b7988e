import { CalendarCheck } from 'lucide-react';
import type { Promised } from '../../../core/planning/answers.ts';
import { promiseWords } from '../../../core/report/promise-words.ts';
import type { SafeDate } from '../../../core/report/safe-date-words.ts';
import { Button } from '../../ui/button.tsx';
import styles from './orders.module.css';

interface Props {
  answer: Promised;
  /** The due date typed so far; NaN: none. */
  due: number;
  timeZone: string;
  /** The date kept with the confidence chosen; null while too little work is finished. */
  withConfidence: SafeDate | null;
  /** The form was changed since: the date may be another. */
  old: boolean;
  onPromise: (due: number) => void;
}

/** When a line can be ready without making anything late, and what an earlier date would cost. */
export function PromiseLine({ answer, due, timeZone, withConfidence, old, onPromise }: Props) {
  const { ready, tooEarly, earlier, date } = promiseWords(answer, Number.isNaN(due) ? null : due, timeZone);
  const offer = (at: number | null, words: string) =>
    at !== null && (
      <Button small isDisabled={old || at === due} onPress={() => onPromise(at)}>
        {words}
      </Button>
    );
  return (
    <div className={styles.promise} role="status">
      <CalendarCheck size={16} aria-hidden />
      <div>
        <p>{ready}</p>
        {withConfidence && <p>{withConfidence.words}</p>}
        {tooEarly && <p className={styles.warning}>{tooEarly}</p>}
        {earlier.length > 0 && (
          <details>
            <summary>Earlier would cost</summary>
            <ul>
              {earlier.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </details>
        )}
      </div>
      <div className={styles.offers}>
        {offer(date, 'Accept this date')}
        {withConfidence && offer(withConfidence.date, 'Accept the surer date')}
      </div>
    </div>
  );
}
