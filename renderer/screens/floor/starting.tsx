import { ArrowLeftRight, Play } from 'lucide-react';
import type { FloorWork } from '../../../core/report/floor.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import { formatWall } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { BigButton } from './big-button.tsx';
import styles from './floor.module.css';
import { useChangeoverSince } from './kept.ts';
import { Steps } from './next-list.tsx';
import { useFloor } from './use-floor.ts';
import { useFloorKeys } from './use-floor-keys.ts';

interface Props {
  work: FloorWork;
  machine: Machine;
  timeZone: string;
  now: Instant;
}

/** Before the operation begins: what to change on the machine, then Start. */
export function Starting({ work, machine, timeZone, now }: Props) {
  const { operation, changeover, notYet, row } = work;
  const floor = useFloor(operation.id);
  const since = useChangeoverSince(operation.id);
  const able = operation.machines.find(({ id }) => id === machine.id);
  const start = () => floor.start(machine.id, since);
  useFloorKeys(notYet ? {} : { S: start });
  return (
    <div className={styles.report}>
      <div className={styles.before}>
        {changeover ? (
          <>
            <p>
              <b>Change over first</b>, about {formatDuration(changeover.seconds)}
            </p>
            <Steps steps={changeover.steps} />
          </>
        ) : (
          <p>The machine is set up for it.</p>
        )}
        <p className={styles.soft}>
          {`Planned ${formatWall(row.start, timeZone)} to ${formatWall(row.end, timeZone)}`}
          {able && `, ${formatDuration(able.seconds)} of work`}
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
      <div className={styles.buttons}>
        {changeover && since === null && (
          <BigButton icon={ArrowLeftRight} onPress={floor.changeover}>
            Begin changeover
          </BigButton>
        )}
        <BigButton look="primary" icon={Play} keys="S" isDisabled={notYet !== null} onPress={start}>
          Start
        </BigButton>
      </div>
    </div>
  );
}
