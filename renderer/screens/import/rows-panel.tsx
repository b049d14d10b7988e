import { Check, PencilLine, X } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Reading, RowReading, RowState } from '../../../core/import/reading.ts';
import { Button } from '../../ui/button.tsx';
import { Segments } from '../../ui/segments.tsx';
import { EmptyState } from '../../ui/states.tsx';
import styles from './import.module.css';
import type { AnswerProps } from './answer-props.ts';
import { RowsGrid, type RowActs } from './rows-grid.tsx';
import { reasonsOf, STATES } from './rows-view.ts';
import { withAccepted, withCell, withRowsOut } from './say.ts';

/** Every row as it was read, all or those of a state, and what can be done with the one that the keyboard is on. */
export function RowsPanel({ reading, answers, say }: AnswerProps) {
  const [state, setState] = useState<RowState | 'all'>('all');
  const [at, go] = useState(0);
  const rows = useMemo(
    () => (state === 'all' ? reading.rows : reading.rows.filter((row) => row.state === state)),
    [reading, state],
  );
  const acts: RowActs = {
    fix: (row, field, text) => void say(withCell(answers, row, field, text)),
    leaveOut: ({ row }) => void say(withRowsOut(answers, [row])),
    accept: (row) => canBeMeant(row) && void say(withAccepted(answers, [row.row])),
  };
  const place = Math.min(at, rows.length - 1);
  const row = rows[place];
  return (
    <div className={styles.rows}>
      <div className={styles.filter}>
        <Segments
          label="Rows shown"
          value={state}
          choices={choicesOf(reading)}
          onChange={(next) => {
            setState(next);
            go(0);
          }}
        />
      </div>
      {rows.length === 0 ? (
        <EmptyState title="No row of this kind" />
      ) : (
        <RowsGrid reading={reading} rows={rows} at={place} onGo={go} {...acts} />
      )}
      {row && <ChosenRow row={row} {...acts} />}
    </div>
  );
}

const choicesOf = ({ counts, rows }: Reading): (readonly [RowState | 'all', string])[] => [
  ['all', `All ${rows.length}`],
  ...STATES.filter(([state]) => counts[state] > 0).map(
    ([state, words]) => [state, `${words} ${counts[state]}`] as const,
  ),
];

const canBeMeant = ({ cells }: RowReading): boolean => cells.some(({ acceptable }) => acceptable === true);

/** The row that the keyboard is on: all that is said of it, and what can be done with it. */
function ChosenRow({ row, leaveOut, accept }: { row: RowReading } & RowActs) {
  const reasons = reasonsOf(row);
  return (
    <div className={styles.chosenRow}>
      <div className={styles.chosenWords}>
        <strong>{`Row ${row.row}${row.subject === '' ? '' : `, ${row.subject}`}`}</strong>{' '}
        {reasons.length > 0 ? reasons.join(' ') : WORDS[row.state]}
      </div>
      <span className={styles.hint}>
        <PencilLine size={14} aria-hidden /> Enter or a double click changes a cell
      </span>
      {canBeMeant(row) && (
        <Button small icon={Check} onPress={() => accept(row)}>
          Meant so (Space)
        </Button>
      )}
      <Button small icon={X} onPress={() => leaveOut(row)}>
        Leave out (Delete)
      </Button>
    </div>
  );
}

const WORDS: Readonly<Record<RowState, string>> = {
  wrong: 'cannot be taken as it is.',
  waiting: 'waits for an answer above.',
  changed: 'changes what the shop has.',
  new: 'is new.',
  known: 'is in the shop already, as it is here.',
};
