import type { Missing } from '../../../core/report/missing.ts';
import { lineOfIssue } from '../../../core/planning/left-out.ts';
import { counted } from '../../../core/units/count.ts';
import { useAct } from '../../form/use-act.ts';
import { placeOf } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { toastError } from '../../ui/toast.tsx';
import styles from './missing.module.css';

const orderOf = (lineId: string): string => lineId.slice(0, lineId.lastIndexOf('/'));

/** What is missing to plan, a cause each: what it is, the press that mends it, and the lines that wait for it. */
export function MissingList({ missing }: { missing: readonly Missing[] }) {
  const act = useAct();
  return (
    <ul className={styles.list} aria-label="Still missing to plan">
      {missing.map(({ cause, message, advice, issues, lines, remedy, place }) => (
        <li key={cause}>
          <p className={styles.message}>{message}</p>
          <p className={styles.advice}>{advice}</p>
          <p className={styles.acts}>
            {remedy && (
              <Button small look="primary" onPress={() => void act(remedy.command).catch(toastError)}>
                {remedy.label}
              </Button>
            )}
            <a href={placeOf(...place)}>{remedy ? 'Or do it by hand' : 'Go there'}</a>
          </p>
          {lines.length > 0 && (
            <details>
              <summary>{`Which ${lines.length === 1 ? 'line' : counted(lines.length, 'line')}`}</summary>
              <ul className={styles.lines}>
                {issues.map((issue, i) => (
                  <li key={i}>
                    <a href={placeOf('orders', orderOf(lineOfIssue(issue)))}>{lineOfIssue(issue)}</a>{' '}
                    {issue.message} {issue.advice}
                  </li>
                ))}
              </ul>
            </details>
          )}
        </li>
      ))}
    </ul>
  );
}
