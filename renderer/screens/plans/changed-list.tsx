import type { ChangedRow } from '../../../core/report/plan-words.ts';

/** What changed in a machine's queue, one thing an item. */
export const ChangedList = ({ rows, className }: { rows: readonly ChangedRow[]; className?: string }) => (
  <ul className={className}>
    {rows.map(({ operation, name, words }) => (
      <li key={operation}>
        <strong>{name}</strong> {words}
      </li>
    ))}
  </ul>
);
