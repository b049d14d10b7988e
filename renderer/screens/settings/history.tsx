import { useState } from 'react';
import type { DoneEntry } from '../../../core/contract/plans.ts';
import { planName } from '../../../core/report/plan-words.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { useShop } from '../../queries/hooks.ts';
import { useStory } from '../../queries/plans.ts';
import { Button } from '../../ui/button.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { CorrectDialog } from '../learning/correct-dialog.tsx';
import { useGoBackTo } from '../plans/use-go-back-to.ts';
import { usePlansView } from '../plans/plans-view.ts';
import styles from './settings.module.css';
import { TakeBackDialog } from './take-back-dialog.tsx';

type Reported = Extract<DoneEntry, { readonly is: 'fact' }>;

/** What was done at desk and floor by whom and when, newest first; plans kept or published can be gone back to. */
export function History({ timeZone }: { timeZone: string }) {
  const { data, error, hasNextPage, fetchNextPage } = useStory();
  const { data: shop } = useShop();
  const entries = data?.pages.flatMap((page) => page.entries) ?? [];
  const records = recordsByEntry(shop, entries);
  return (
    <section className={styles.panel} aria-label="What was done">
      <h2>What was done</h2>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Reading the history" />}
      {data && entries.length === 0 && <p className={styles.note}>Nothing yet.</p>}
      {entries.length > 0 && (
        <ol className={styles.history}>
          {entries.map((entry) => (
            <Entry
              key={`${entry.is} ${entry.id}`}
              entry={entry}
              timeZone={timeZone}
              record={records.get(entry) ?? null}
            />
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

interface EntryProps {
  entry: DoneEntry;
  timeZone: string;
  /** The record that the entry told of last, where it can be corrected; null: none. */
  record: OperationRecord | null;
}

function Entry({ entry, timeZone, record }: EntryProps) {
  const goBackTo = useGoBackTo();
  const when = (at: number) => formatDayAndClock(at, timeZone);
  const undone = entry.is === 'fact' ? entry.putRight !== null : entry.undone;
  const notes = [
    when(entry.at),
    entry.by,
    entry.is !== 'fact' && undone && 'undone',
    entry.is === 'fact' && entry.at - entry.happened > SAID_AFTER_S && `for ${when(entry.happened)}`,
    entry.is === 'fact' && entry.reason,
    entry.is === 'fact' &&
      entry.putRight &&
      `put right by “${entry.putRight.label}”, ${when(entry.putRight.at)}`,
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
      {entry.is === 'fact' && <PutRight fact={entry} record={record} />}
    </li>
  );
}

/** What was reported wrongly is taken back, or its record corrected; either needs a reason. */
function PutRight({ fact, record }: { fact: Reported; record: OperationRecord | null }) {
  const { data: shop } = useShop();
  const [open, setOpen] = useState<'take back' | 'correct' | null>(null);
  const close = () => setOpen(null);
  if (fact.putRight) return null;
  return (
    <>
      <Button small onPress={() => setOpen('take back')} aria-label={`Take back: ${fact.label}`}>
        Take back…
      </Button>{' '}
      {record && (
        <Button small onPress={() => setOpen('correct')} aria-label={`Correct: ${fact.label}`}>
          Correct…
        </Button>
      )}
      {open === 'take back' && <TakeBackDialog fact={fact} onClose={close} />}
      {open === 'correct' && shop && record && <CorrectDialog shop={shop} record={record} onClose={close} />}
    </>
  );
}

/** The record of an operation stands with the newest entry that tells of it. */
function recordsByEntry(
  shop: Shop | undefined,
  entries: readonly DoneEntry[],
): Map<DoneEntry, OperationRecord> {
  const left = new Map(shop?.record.map((record) => [record.id, record]));
  const found = new Map<DoneEntry, OperationRecord>();
  for (const entry of entries) {
    const record = entry.is === 'fact' && entry.operation !== null ? left.get(entry.operation) : undefined;
    if (!record) continue;
    found.set(entry, record);
    left.delete(record.id);
  }
  return found;
}
