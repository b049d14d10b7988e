import { useState } from 'react';
import { formatClock, toInstant, wallParts } from '../../core/time/wall.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import type { FieldWords } from './field-parts.tsx';
import styles from './field.module.css';
import { TextField } from './text-field.tsx';

interface Props extends FieldWords {
  /** null: empty. */
  value: Instant | null;
  /** The shop's zone: what is typed and shown is the clock on its wall. */
  timeZone: string;
  /** The clock to take when only a date is typed, "17:00". */
  usualClock: string;
  onChange: (value: Instant | null) => void;
}

/** A date and a time of day on the shop's wall clock. An empty date means none. */
export function DateTimeField({ label, help, error, value, timeZone, usualClock, onChange }: Props) {
  const [typing, setTyping] = useState<{ date: string; clock: string } | null>(null);
  const shown =
    value === null
      ? { date: '', clock: '' }
      : { date: wallParts(value, timeZone).date, clock: formatClock(value, timeZone) };
  const { date, clock } = typing ?? shown;

  const change = (next: { date: string; clock: string }) => {
    setTyping(next);
    if (next.date === '') return onChange(null);
    onChange(instant(toInstant(next.date, next.clock || usualClock, timeZone)));
  };

  return (
    <div className={styles.pair} onBlur={() => setTyping(null)}>
      <TextField
        label={label}
        type="date"
        value={date}
        onChange={(text) => change({ date: text, clock })}
        help={help}
        error={error}
      />
      <TextField
        label="Time"
        type="time"
        value={clock}
        onChange={(text) => change({ date, clock: text })}
        isDisabled={date === ''}
      />
    </div>
  );
}
