import { formatWallDate } from '../../../core/time/wall.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { Tag } from '../../ui/tag.tsx';
import { isOver, type MachineLoad, percent } from './load-days.ts';
import styles from './load.module.css';

/** A machine's days as figures: what the chart draws, for those who read. */
export const LoadTable = ({ load, timeZone }: { load: MachineLoad; timeZone: string }) => (
  <table className={styles.table} aria-label={`Load of ${load.machine.name} by day`}>
    <thead>
      <tr>
        <th scope="col">Day</th>
        <th scope="col">Open</th>
        <th scope="col">Work</th>
        <th scope="col">Changeover</th>
        <th scope="col">Utilisation</th>
      </tr>
    </thead>
    <tbody>
      {load.days.map((day) => (
        <tr key={day.day}>
          <th scope="row">{formatWallDate(day.day, timeZone)}</th>
          <td>{day.capacity > 0 ? formatDuration(day.capacity) : 'closed'}</td>
          <td>{formatDuration(day.work)}</td>
          <td>{formatDuration(day.changeover)}</td>
          <td>
            {day.utilisation !== null && percent(day.utilisation)}{' '}
            {isOver(day) && (
              <Tag look="late">{`over by ${formatDuration(day.work + day.changeover - day.capacity)}`}</Tag>
            )}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
