import { Check, History, Layers2, Pause, Play } from 'lucide-react';
import { useState } from 'react';
import { earliestEnd } from '../../../core/edit/floor-times.ts';
import { isElsewhere } from '../../../core/part/stage.ts';
import type { FloorWork } from '../../../core/report/floor.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWall } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { DAY, formatDuration } from '../../../core/units/duration.ts';
import { BigButton, LesserButton } from './big-button.tsx';
import { CountFields, MOST_SCRAPPED } from './count-field.tsx';
import { DoneDialog } from './done-dialog.tsx';
import styles from './floor.module.css';
import { PauseDialog } from './pause-dialog.tsx';
import { TimeDialog } from './time-dialog.tsx';
import { countsBeyond, useCounts, type Counts } from './use-counts.ts';
import { useFloor } from './use-floor.ts';
import { useFloorKeys } from './use-floor-keys.ts';
import { counted } from '../../../core/units/count.ts';

interface Props {
  record: OperationRecord;
  work: FloorWork;
  shop: Shop;
  /** Why work cannot go on now; null: the machine stands ready. */
  stopped: string | null;
  /** Who is at the machine; empty: not said. */
  who: string;
}

/** While the operation is under way: the count, and the buttons. */
export function Running({ record, work, shop, stopped, who }: Props) {
  const { counts, set } = useCounts(record);
  // Fewer may be asked than are made already.
  const pieces = Math.max(work.row.quantity, counts.good);
  const floor = useFloor(record.id, who);
  const [asking, ask] = useState<'pause' | 'time' | { readonly endedAt: Instant | null } | null>(null);
  const paused = record.pauses.at(-1)?.to === null;
  const away = isElsewhere(work.operation.stage);
  const endedAt = typeof asking === 'object' && asking ? asking.endedAt : null;
  const finish = (made: Counts, at: Instant | null) => floor.done(countsBeyond(made, counts), at);
  const done = (at: Instant | null) =>
    counts.good + counts.scrapped < pieces ? ask({ endedAt: at }) : finish(counts, at);
  const oneMore = (key: keyof Counts, most: number) => () => set({ [key]: Math.min(most, counts[key] + 1) });
  useFloorKeys({
    ...(paused
      ? { ...(stopped === null ? { S: floor.resume } : {}), L: floor.suspend }
      : away
        ? {}
        : { A: () => ask('pause') }),
    D: () => done(null),
    T: () => ask('time'),
    '+': oneMore('good', pieces),
    X: oneMore('scrapped', MOST_SCRAPPED),
  });
  return (
    <div className={styles.report}>
      <Progress
        {...{ record, work, shop, counts, paused, suspend: floor.suspend }}
        onEarlier={() => ask('time')}
      />
      <CountFields pieces={pieces} counts={counts} set={set} />
      <Buttons
        paused={paused}
        onResume={stopped === null ? floor.resume : null}
        onPause={away ? null : () => ask('pause')}
        onDone={() => done(null)}
      />
      <TimeDialog
        what="end"
        timeZone={shop.settings.timeZone}
        earliest={earliestEnd(record)}
        isOpen={asking === 'time'}
        onTime={done}
        onClose={() => ask(null)}
      />
      <PauseDialog isOpen={asking === 'pause'} onPause={floor.pause} onClose={() => ask(null)} />
      <DoneDialog
        pieces={pieces}
        counts={counts}
        isOpen={typeof asking === 'object' && asking !== null}
        onDone={(made) => finish(made, endedAt)}
        onClose={() => ask(null)}
      />
    </div>
  );
}

interface ButtonProps {
  paused: boolean;
  /** null: the machine is stopped. */
  onResume: (() => void) | null;
  /** null: it is away, and not ours to pause. */
  onPause: (() => void) | null;
  onDone: () => void;
}

const Buttons = ({ paused, onResume, onPause, onDone }: ButtonProps) => (
  <div className={styles.buttons}>
    {paused
      ? onResume && (
          <BigButton look="primary" icon={Play} keys="S" onPress={onResume}>
            Resume
          </BigButton>
        )
      : onPause && (
          <BigButton icon={Pause} keys="A" onPress={onPause}>
            Pause
          </BigButton>
        )}
    <BigButton look={paused ? 'usual' : 'primary'} icon={Check} keys="D" onPress={onDone}>
      {onPause === null ? 'Back' : 'Done'}
    </BigButton>
  </div>
);

function Progress({
  record,
  work,
  shop: { settings },
  counts,
  paused,
  suspend,
  onEarlier,
}: Omit<Props, 'who' | 'stopped'> & {
  counts: Counts;
  paused: boolean;
  suspend: () => void;
  onEarlier: () => void;
}) {
  const pause = paused ? record.pauses.at(-1) : undefined;
  const short = work.row.quantity - counts.good;
  const wall = (at: number) => formatWall(instant(at), settings.timeZone);
  const away = isElsewhere(work.operation.stage);
  const spent = (seconds: number) =>
    away ? counted(Math.floor(seconds / DAY), 'day') : formatDuration(seconds);
  return (
    <div className={styles.before}>
      <p>
        {pause ? (
          <b className={styles.paused}>{`Paused since ${wall(pause.from)}: ${pause.reason}`}</b>
        ) : (
          <>
            <b>{away ? 'Away' : 'Under way'}</b> since {wall(record.start)}, {spent(work.workedSeconds)} of
            about {spent(record.estimatedSeconds)}
            {record.who.length > 0 && `, by ${record.who.join(', ')}`}
          </>
        )}
      </p>
      <p className={styles.soft}>
        {away ? 'Back' : 'Will end'} about {wall(work.row.end)}
      </p>
      {counts.scrapped > 0 && short > 0 && counts.good + counts.scrapped >= work.row.quantity && (
        <p role="status">
          {`${counted(short, 'piece')} will be made again on a line of ${short === 1 ? 'its' : 'their'} own.`}
        </p>
      )}
      <div className={styles.lesser}>
        {paused && (
          <LesserButton icon={Layers2} keys="L" onPress={suspend}>
            Suspend
          </LesserButton>
        )}
        <LesserButton icon={History} keys="T" onPress={onEarlier}>
          Ended earlier
        </LesserButton>
      </div>
    </div>
  );
}
