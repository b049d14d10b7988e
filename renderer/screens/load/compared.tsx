import type { PlanFigures } from '../../../core/planning/figures.ts';
import { Tag } from '../../ui/tag.tsx';
import { comparedFigures } from './comparison.ts';
import styles from './load.module.css';

interface Props {
  plan: PlanFigures;
  yardstick: PlanFigures | null;
  timeZone: string;
}

const looks = { plan: 'fine', yardstick: 'warn', neither: 'plain' } as const;

/** This plan beside plain due-date order. */
export const Compared = ({ plan, yardstick, timeZone }: Props) => (
  <table className={styles.table}>
    <thead>
      <tr>
        <th scope="col">All planned lines</th>
        <th scope="col">This plan</th>
        <th scope="col">Due-date order</th>
        <th scope="col">Difference</th>
      </tr>
    </thead>
    <tbody>
      {comparedFigures(plan, yardstick, timeZone).map((figure) => (
        <tr key={figure.label}>
          <th scope="row">
            {figure.label} <span className={styles.note}>{figure.help}</span>
          </th>
          <td className={styles.strong}>{figure.plan}</td>
          <td>{figure.yardstick ?? '–'}</td>
          <td>
            <Tag look={looks[figure.better]}>{figure.gain}</Tag>
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
