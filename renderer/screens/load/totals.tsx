import { formatDuration } from '../../../core/units/duration.ts';
import { Tag } from '../../ui/tag.tsx';
import { isOver, type MachineLoad, percent } from './load-days.ts';
import styles from './load.module.css';

/** Each machine over the whole range. */
export const Totals = ({ loads }: { loads: readonly MachineLoad[] }) => (
  <table className={styles.table}>
    <thead>
      <tr>
        <th scope="col">Machine</th>
        <th scope="col">Open</th>
        <th scope="col">Work</th>
        <th scope="col">Changeover</th>
        <th scope="col">Free</th>
        <th scope="col">Utilisation</th>
      </tr>
    </thead>
    <tbody>
      {loads.map((load) => (
        <tr key={load.machine.id}>
          <th scope="row">{load.machine.name}</th>
          <td>{formatDuration(load.capacity)}</td>
          <td>{formatDuration(load.work)}</td>
          <td>{formatDuration(load.changeover)}</td>
          <td>{formatDuration(Math.max(0, load.capacity - load.work - load.changeover))}</td>
          <td>
            {load.utilisation === null ? 'closed' : percent(load.utilisation)}{' '}
            {isOver(load) && <Tag look="late">over</Tag>}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
