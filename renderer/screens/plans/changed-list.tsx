import type { ChangedRow } from '../../../core/report/plan-words.ts';
import { counted } from '../../../core/units/count.ts';

interface Props {
  rows: readonly ChangedRow[];
  /** No more than these are named; missing: all are. */
  named?: number;
  className?: string;
}

/** What changed in a machine's queue, one thing an item. */
export const ChangedList = ({ rows, named = rows.length, className }: Props) => (
  <ul className={className}>
    {rows.slice(0, named).map(({ operation, lineId, words }) => (
      <li key={operation}>
        <strong>{lineId}</strong> {words}
      </li>
    ))}
    {rows.length > named && <li>{`and ${counted(rows.length - named, 'more', 'more')}`}</li>}
  </ul>
);
