import { instant, type Instant } from '../../../../core/units/brand.ts';
import { DateTimeField } from '../../../ui/date-time-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import type { FieldErrors } from './field-errors.ts';

interface Span {
  readonly from: number;
  readonly to: number;
  readonly reason: string;
}

interface Props {
  timeZone: string;
  entries: Span;
  errors: FieldErrors;
  set: (patch: Partial<Span>) => void;
}

/** From when to when something or someone is missing, and why. */
export const SpanFields = ({ timeZone, entries, errors, set }: Props) => (
  <>
    <DateTimeField
      label="From"
      timeZone={timeZone}
      usualClock="07:00"
      value={orNull(entries.from)}
      onChange={(from) => set({ from: from ?? NaN })}
      error={errors.from}
    />
    <DateTimeField
      label="To"
      timeZone={timeZone}
      usualClock="17:00"
      value={orNull(entries.to)}
      onChange={(to) => set({ to: to ?? NaN })}
      error={errors.to}
    />
    <TextField
      label="Reason"
      value={entries.reason}
      onChange={(reason) => set({ reason })}
      error={errors.reason}
    />
  </>
);

const orNull = (at: number): Instant | null => (Number.isNaN(at) ? null : instant(at));
