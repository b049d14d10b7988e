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
export function MissingList({
  missing,
  hrefOf = ({ place }) => placeOf(...place),
}: {
  missing: readonly Missing[];
  /** Where a cause is mended by hand; null: here. */
  hrefOf?: (missing: Missing) => string | null;
}) {
  return (
    <ul className={styles.list} aria-label="Still missing to plan">
      {missing.map((one) => (
        <li key={one.cause}>
          <p className={styles.message}>{one.message}</p>
          <p className={styles.advice}>{one.advice}</p>
          <Acts remedy={one.remedy} href={hrefOf(one)} />
          <Lines lines={one.lines} issues={one.issues} />
        </li>
      ))}
    </ul>
  );
}

function Acts({ remedy, href }: { remedy: Missing['remedy']; href: string | null }) {
  const act = useAct();
  if (!remedy && href === null) return null;
  return (
    <p className={styles.acts}>
      {remedy && (
        <Button small look="primary" onPress={() => void act(remedy.command).catch(toastError)}>
          {remedy.label}
        </Button>
      )}
      {href !== null && <a href={href}>{remedy ? 'Or do it by hand' : 'Go there'}</a>}
    </p>
  );
}

/** Each line that waits, with what the plan says of it. */
function Lines({ lines, issues }: Pick<Missing, 'lines' | 'issues'>) {
  if (lines.length === 0) return null;
  return (
    <details>
      <summary>{`Which ${lines.length === 1 ? 'line' : counted(lines.length, 'line')}`}</summary>
      <ul className={styles.lines}>
        {issues.map((issue, i) => (
          <li key={i}>
            <a href={placeOf('orders', orderOf(lineOfIssue(issue)))}>{lineOfIssue(issue)}</a> {issue.message}{' '}
            {issue.advice}
          </li>
        ))}
      </ul>
    </details>
  );
}
