import { Check } from 'lucide-react';
import { useEffect } from 'react';
import { Button as Pressable } from 'react-aria-components';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { ChangeWords } from '../../../core/report/change-words.ts';
import { whyWords, type CauseWords } from '../../../core/report/why-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { useBoardView } from '../../gantt/view.ts';
import { useWhy } from '../../queries/ask.ts';
import { useCommand } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { toast, toastError } from '../../ui/toast.tsx';
import styles from './why.module.css';

/** Why a line ends when it does: causes with their share of the time, then single changes that help, each one press away. */
export function WhyPanel({ shop, plan, lineId }: { shop: Shop; plan: PlanView; lineId: string }) {
  const { data, error } = useWhy(lineId, plan);
  const mark = useBoardView((view) => view.mark);
  useEffect(() => () => mark([]), [mark, data]);
  if (error) return <SentenceError message={error.message} />;
  if (!data) return <Waiting doing={`Working out what ${lineId} waits for`} />;
  const { question, title, sum, causes, changes, help } = whyWords(shop, data);
  return (
    <div className={styles.why}>
      <header>
        <h2 className={styles.question}>{question}</h2>
        <p>{title}</p>
        <p className={styles.soft}>{sum}</p>
      </header>
      <ol className={styles.causes} aria-label="Causes">
        {causes.map((cause) => (
          <li key={`${cause.kind} ${cause.words}`}>
            <Cause cause={cause} mark={mark} />
          </li>
        ))}
      </ol>
      {help && <h3>{help}</h3>}
      {changes.length > 0 && (
        <ul className={styles.changes} aria-label="Changes that help">
          {changes.map((change) => (
            <li key={change.title} className={styles.change}>
              <Offer change={change} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(1)}%`;

/** Touched or gone to by key, its bars are marked on the board. */
function Cause({ cause, mark }: { cause: CauseWords; mark: (operations: readonly string[]) => void }) {
  const { words, seconds, lateSeconds, share, operations } = cause;
  const show = (on: boolean) => mark(on ? operations : []);
  return (
    <Pressable
      className={styles.cause ?? ''}
      onHoverChange={show}
      onFocusChange={show}
      onPress={() => show(true)}
    >
      <span className={styles.line}>
        <span>{words}</span>
        <data className={styles.minutes} value={seconds}>
          {formatDuration(seconds)}
        </data>
      </span>
      <span className={styles.bar} aria-hidden>
        <span style={{ width: percent((share * (seconds - lateSeconds)) / seconds) }} />
        <span className={styles.lateBar} style={{ width: percent((share * lateSeconds) / seconds) }} />
      </span>
      {lateSeconds > 0 && (
        <span className={styles.late}>
          ▲ <data value={lateSeconds}>{formatDuration(lateSeconds)}</data> after the due date
        </span>
      )}
    </Pressable>
  );
}

function Offer({ change: { title, effect, cost, caution, command } }: { change: ChangeWords }) {
  const { mutate, isPending } = useCommand();
  const act = () => {
    if (!command) return;
    mutate(command, {
      onSuccess: ({ label }) => toast({ text: `${label}. It can be undone.` }),
      onError: toastError,
    });
  };
  return (
    <>
      <p>
        <b>{title}</b> {effect}
      </p>
      <p className={styles.soft}>{cost}</p>
      {caution && <p>{caution}</p>}
      <Button
        small
        icon={Check}
        isDisabled={!command || isPending}
        onPress={act}
        aria-label={`Make this change: ${title}`}
      >
        Make this change
      </Button>
    </>
  );
}
