import { OctagonX, TimerReset } from 'lucide-react';
import { cautionsWhenDown } from '../../../core/report/cautions.ts';
import type { Downtime, Machine } from '../../../core/shop/machine.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { askOutage } from '../what-if/what-if-view.ts';
import { BigButton } from './big-button.tsx';
import styles from './floor.module.css';

interface Props {
  stopped: Downtime;
  machine: Machine;
  timeZone: string;
}

/** A machine that is down says so, until when and why, and what comes before anyone works on it. */
export const Stopped = ({ stopped, machine, timeZone }: Props) => (
  <section className={styles.stopped} role="status" aria-label="Stopped">
    <OctagonX size={40} aria-hidden />
    <div>
      <strong>{`${machine.name} is stopped until ${formatDayAndClock(stopped.to, timeZone)}`}</strong>
      {stopped.reason !== '' && <p>{stopped.reason}</p>}
      <p>{cautionsWhenDown(machine.stage).governs}</p>
    </div>
    <BigButton icon={TimerReset} onPress={() => askOutage(stopped)}>
      Back, or longer
    </BigButton>
  </section>
);
