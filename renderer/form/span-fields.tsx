import type { ReactNode } from 'react';
import { instant, type Instant } from '../../core/units/brand.ts';
import { DateTimeField } from '../ui/date-time-field.tsx';
import { TextField } from '../ui/text-field.tsx';
import type { FieldErrors } from './field-errors.ts';

interface Beginning {
  readonly from: number;
  readonly reason: string;
}

interface Props<T extends Beginning> {
  timeZone: string;
  entries: T;
  errors: FieldErrors;
  set: (patch: Partial<T>) => void;
}

/** From when something or someone is missing, for how long (the children), and why. */
export const OutageFields = ({
  timeZone,
  entries,
  errors,
  set,
  children,
}: Props<Beginning> & { children: ReactNode }) => (
  <>
    <DateTimeField
      label="From"
      timeZone={timeZone}
      usualClock="07:00"
      value={orNull(entries.from)}
      onChange={(from) => set({ from: from ?? NaN })}
      error={errors.from}
    />
    {children}
    <TextField
      label="Reason"
      value={entries.reason}
      onChange={(reason) => set({ reason })}
      error={errors.reason}
    />
  </>
);

/** From when to when something or someone is missing, and why. */
export const SpanFields = (props: Props<Beginning & { readonly to: number }>) => (
  <OutageFields {...props}>
    <DateTimeField
      label="To"
      timeZone={props.timeZone}
      usualClock="17:00"
      value={orNull(props.entries.to)}
      onChange={(to) => props.set({ to: to ?? NaN })}
      error={props.errors.to}
    />
  </OutageFields>
);

/** A time of a form's entries, where NaN is one still to be typed. */
export const orNull = (at: number): Instant | null => (Number.isNaN(at) ? null : instant(at));
