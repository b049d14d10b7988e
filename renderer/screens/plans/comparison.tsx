import type { PlanComparison } from '../../../core/planning/compare-plans.ts';
import { movedLines, sumRows, type MovedLine } from '../../../core/report/plan-words.ts';
import { operationName } from '../../../core/edit/plan-commands.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { ColumnHeads } from '../../ui/column-heads.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './plans.module.css';

interface Props {
  comparison: PlanComparison;
  timeZone: string;
}

/** How one plan differs from another: in figures, line by line, and where work stands on another machine. */
export function Comparison({ comparison, timeZone }: Props) {
  const moved = movedLines(comparison);
  const { otherMachine } = comparison;
  return (
    <>
      <p className={styles.soft}>
        Both as they would be worked from now on: what is done is left out, newer work stands behind.
      </p>
      <table className={styles.table} aria-label="Figures of both plans">
        <thead>
          <tr>
            <ColumnHeads heads={['', 'From', 'To']} />
          </tr>
        </thead>
        <tbody>
          {sumRows(comparison).map(({ label, before, after }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td>{before}</td>
              <td>{before === after ? after : <strong>{after}</strong>}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {moved.length === 0 ? (
        <p>Every line ends at the same time in both.</p>
      ) : (
        <MovedLines moved={moved} timeZone={timeZone} />
      )}
      {otherMachine.length > 0 && (
        <table className={styles.table} aria-label="On another machine">
          <thead>
            <tr>
              <ColumnHeads heads={['On another machine', 'From', 'To']} />
            </tr>
          </thead>
          <tbody>
            {otherMachine.map(({ operation, from, to }) => (
              <tr key={operation}>
                <th scope="row">{operationName(operation)}</th>
                <td>{from}</td>
                <td>{to}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

const MovedLines = ({ moved, timeZone }: { moved: readonly MovedLine[]; timeZone: string }) => (
  <table className={styles.table} aria-label="Lines that end at another time">
    <thead>
      <tr>
        <ColumnHeads heads={['Line', 'Ends (from)', 'Ends (to)', 'Difference', 'Due']} />
      </tr>
    </thead>
    <tbody>
      {moved.map(({ lineId, before, after, due, words, turn }) => (
        <tr key={lineId}>
          <th scope="row">{lineId}</th>
          <td>{formatDayAndClock(before, timeZone)}</td>
          <td>{formatDayAndClock(after, timeZone)}</td>
          <td>
            {words} {turn && <Tag look={turn === 'newly late' ? 'late' : 'fine'}>{turn}</Tag>}
          </td>
          <td>{formatDayAndClock(due, timeZone)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
