import type { DoneEntry } from '../../../core/contract/plans.ts';
import { planName } from '../../../core/report/plan-words.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { useStory } from '../../queries/plans.ts';
import { Button } from '../../ui/button.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { useGoBackTo } from '../plans/use-go-back-to.ts';
import { usePlansView } from '../plans/plans-view.ts';
import styles from './settings.module.css';

/** What was done at desk and floor by whom and when, newest first; plans kept or published can be gone back to. */
export function History({ timeZone }: { timeZone: string }) {
  const { data, error, hasNextPage, fetchNextPage } = useStory();
  const entries = data?.pages.flatMap((page) => page.entries) ?? [];
  return (
    <section className={styles.panel}>
      <h2>What was done</h2>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Reading the history" />}
      {data && entries.length === 0 && <p className={styles.note}>Nothing yet.</p>}
      {entries.length > 0 && (
        <ol className={styles.history}>
          {entries.map((entry) => (
            <Entry key={`${entry.is} ${entry.id}`} entry={entry} timeZone={timeZone} />
          ))}
          {hasNextPage && (
            <li>
              <Button small onPress={() => void fetchNextPage()}>
                Show older
              </Button>
            </li>
          )}
        </ol>
      )}
      <Button onPress={() => usePlansView.getState().ask('plans')}>Plans kept…</Button>
    </section>
  );
}

/** So long may lie between what happened and its entry without being said. */
const SAID_AFTER_S = 60;

function Entry({ entry, timeZone }: { entry: DoneEntry; timeZone: string }) {
  const goBackTo = useGoBackTo();
  const when = (at: number) => formatDayAndClock(at, timeZone);
  const undone = entry.is !== 'fact' && entry.undone;
  const notes = [
    when(entry.at),
    entry.by,
    undone && 'undone',
    entry.is === 'fact' && entry.at - entry.happened > SAID_AFTER_S && `for ${when(entry.happened)}`,
    entry.is === 'fact' && entry.reason,
  ].filter(Boolean);
  return (
    <li>
      <span className={undone ? styles.undone : undefined}>
        {entry.is === 'plan' ? planName(entry) : entry.label}
      </span>{' '}
      <span className={styles.note}>{notes.join(', ')}</span>{' '}
      {entry.is === 'plan' && (
        <Button small onPress={() => goBackTo(entry.id)}>
          Go back to it
        </Button>
      )}
    </li>
  );
}
