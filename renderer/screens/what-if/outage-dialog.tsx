import { useState } from 'react';
import type { Command } from '../../../core/edit/command.ts';
import { cautionsWhenBack } from '../../../core/report/cautions.ts';
import type { Downtime } from '../../../core/shop/machine.ts';
import type { Outage } from '../../../core/shop/outage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { HOUR } from '../../../core/units/duration.ts';
import { useAct } from '../../form/use-act.ts';
import { useNow, useShop } from '../../queries/hooks.ts';
import { usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { machineBack, stoppedUntil } from './trouble-entries.ts';
import styles from './what-if.module.css';

interface Props {
  downtimeId: string;
  /** The hours last longer than the plan counted on: what that asks of the plan. */
  onLonger: (outage: Outage) => void;
  onClose: () => void;
}

/** A machine that stands still is back early, or stands longer. */
export function OutageDialog({ downtimeId, onLonger, onClose }: Props) {
  const { data: shop, error } = useShop();
  const row = shop?.downtime.find(({ id }) => id === downtimeId);
  if (shop && row) return <Stopped key={row.revision} {...{ shop, row, onLonger, onClose }} />;
  return (
    <Dialog title="Machine down" isOpen onClose={onClose}>
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the shop" />}
      {shop && <p>These hours were removed: the machine is not stopped by them any more.</p>}
    </Dialog>
  );
}

interface StoppedProps extends Omit<Props, 'downtimeId'> {
  shop: Shop;
  row: Downtime;
}

function Stopped({ shop, row, onLonger, onClose }: StoppedProps) {
  const { timeZone } = shop.settings;
  const now = useNow();
  const act = useAct();
  // A plan is repaired at the desk; at the machine the hours are all there is to say.
  const atMachine = usePlace().path[0] === 'floor';
  const [until, setUntil] = useState<Instant | null>(instant(row.to));
  const [refused, setRefused] = useState<string | null>(null);
  const machine = shop.machine.find(({ id }) => id === row.machineId);
  const give = (command: Command, longer: boolean) =>
    void act(command).then(
      () => (longer && !atMachine ? onLonger({ kind: 'downtime', id: row.id }) : onClose()),
      (error: Error) => setRefused(error.message),
    );
  const keep = (to: number) => give(stoppedUntil(row, to), to > row.to);
  const misfit =
    until === null ? 'Needs a date and a time.' : until <= row.from ? 'Must be after it stopped.' : '';
  return (
    <Dialog
      title={`${machine?.name ?? row.machineId}: stopped until ${formatDayAndClock(row.to, timeZone)}`}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Close</Button>
          <Button
            look="primary"
            isDisabled={misfit !== '' || until === row.to}
            onPress={() => until !== null && keep(until)}
          >
            Save
          </Button>
        </>
      }
    >
      {refused && <SentenceError message={refused} />}
      {row.reason && <p>{row.reason}</p>}
      {machine && <strong role="note">{cautionsWhenBack(machine.stage).governs}</strong>}
      <div className={styles.outageWays}>
        <Button onPress={() => give(machineBack(row, now), false)}>
          {row.from <= now ? 'Back now' : 'It does not stop'}
        </Button>
        {[1, 4].map((hours) => (
          <Button key={hours} onPress={() => keep(row.to + hours * HOUR)}>
            {`${hours} h longer`}
          </Button>
        ))}
      </div>
      <DateTimeField
        label="Stopped until"
        timeZone={timeZone}
        usualClock="17:00"
        value={until}
        onChange={setUntil}
        error={misfit || undefined}
      />
    </Dialog>
  );
}
