import { ArrowLeftRight, History, Play } from 'lucide-react';
import { useState } from 'react';
import { earliestStart } from '../../../core/edit/floor-times.ts';
import { isElsewhere, isFurther } from '../../../core/part/stage.ts';
import type { FloorWork } from '../../../core/report/floor.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Started } from '../../../core/planning/started.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWall } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { counted } from '../../../core/units/count.ts';
import { DAY, formatDuration } from '../../../core/units/duration.ts';
import { BigButton, LesserButton } from './big-button.tsx';
import styles from './floor.module.css';
import { Steps } from './next-list.tsx';
import { useFloor } from './use-floor.ts';
import { TimeDialog } from './time-dialog.tsx';
import { useFloorKeys } from './use-floor-keys.ts';

interface Props {
  work: FloorWork;
  machine: Machine;
  shop: Shop;
  now: Instant;
  /** Why nothing can begin now; null: the machine stands ready. */
  stopped: string | null;
  /** Who is at the machine; empty: not said. */
  who: string;
}

/** Before the operation begins: what to change on the machine, then Start. */
export function Starting({ work, machine, shop, now, stopped, who }: Props) {
  const { operation, changeover } = work;
  const notYet = stopped ?? work.notYet;
  const floor = useFloor(operation.id, who);
  const changing = shop.changeover.find(({ id }) => id === machine.id);
  const since = changing?.operation === operation.id ? changing.since : null;
  const [isEarlier, setEarlier] = useState(false);
  const { suspended } = operation;
  const start = (at: Instant | null) => (suspended ? floor.resume() : floor.start(machine.id, at));
  const earlier = () => setEarlier(true);
  useFloorKeys(notYet ? {} : { S: () => start(null), ...(suspended ? {} : { T: earlier }) });
  const free = earliestStart(shop, operation.id, machine.id);
  return (
    <div className={styles.report}>
      <Before {...{ work, machine, shop, now, since, notYet }} />
      {!notYet && !suspended && (
        <div className={styles.lesser}>
          <LesserButton icon={History} keys="T" onPress={earlier}>
            Started earlier
          </LesserButton>
        </div>
      )}
      {stopped === null && (
        <div className={styles.buttons}>
          <BigButton
            look="primary"
            icon={Play}
            keys="S"
            isDisabled={notYet !== null}
            onPress={() => start(null)}
          >
            {suspended ? 'Resume' : isElsewhere(operation.stage) ? 'Sent' : 'Start'}
          </BigButton>
          {changeover && since === null && (
            <BigButton icon={ArrowLeftRight} onPress={() => floor.changeover(machine.id)}>
              Start changeover
            </BigButton>
          )}
        </div>
      )}
      <TimeDialog
        what="begin"
        timeZone={shop.settings.timeZone}
        earliest={since === null ? free : instant(Math.max(since, free ?? since))}
        isOpen={isEarlier}
        onTime={start}
        onClose={() => setEarlier(false)}
      />
    </div>
  );
}

/** What to change over, when it is planned, and why it cannot begin yet. */
function Before({
  work,
  machine,
  shop,
  now,
  since,
  notYet,
}: Omit<Props, 'who' | 'stopped'> & { since: number | null; notYet: string | null }) {
  const { timeZone } = shop.settings;
  const { operation, changeover, row } = work;
  const able = operation.machines.find(({ id }) => id === machine.id);
  return (
    <div className={styles.before}>
      {changeover ? (
        <>
          <p>
            <b>Change over first</b>, about {formatDuration(changeover.seconds)}
            {changeover.firstPiece && ', first piece included'}
          </p>
          <Steps steps={changeover.steps} />
        </>
      ) : (
        !isFurther(operation.stage) && <p>The machine is set up for it.</p>
      )}
      {operation.suspended && (
        <p>
          <b className={styles.paused}>{suspendedWords(operation.suspended, row.quantity, timeZone)}</b>
        </p>
      )}
      <p className={styles.soft}>
        {`Planned ${formatWall(row.start, timeZone)} to ${formatWall(row.end, timeZone)}`}
        {able &&
          !operation.suspended &&
          `, ${able.estimate.people === 0 ? counted(able.seconds / DAY, 'day') : `${formatDuration(able.seconds)} of work`}`}
      </p>
      {since !== null && (
        <p role="status">{`Changing over since ${formatWall(instant(since), timeZone)}, ${formatDuration(Math.max(0, now - since))}`}</p>
      )}
      {notYet && (
        <p className={styles.notYet} role="status">
          ◆ {notYet}
        </p>
      )}
    </div>
  );
}

/** "Set aside Mon 10:30 with 12 of 40 pieces counted: Rush work elsewhere" */
function suspendedWords({ counted, pauses }: Started, quantity: number, timeZone: string): string {
  const last = pauses.at(-1);
  const when = last ? ` ${formatWall(instant(last.from), timeZone)}` : '';
  return `Suspended${when} with ${counted} of ${quantity} pieces counted: ${last?.reason ?? ''}`;
}
