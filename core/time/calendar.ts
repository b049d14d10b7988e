import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { issue, type Issue } from '../result.ts';
import { clockTime, code, localDate, name, revision } from '../fields.ts';

const span = { start: clockTime, end: clockTime };
const forward = {
  message: 'must end after it starts; give a night shift as two spans split at midnight',
  path: ['end'],
};

/** A stretch of open hours on some weekdays (1 Monday … 7 Sunday), in the shop's wall-clock time. */
export const shift = z
  .strictObject({
    name,
    days: z.array(z.int().min(1).max(7)).min(1, 'needs at least one weekday'),
    ...span,
    breaks: z.array(z.strictObject(span).refine((s) => s.start < s.end, forward)).max(10, 'at most 10'),
  })
  .refine((s) => s.start < s.end, forward);
export type Shift = DeepReadonly<z.infer<typeof shift>>;

/** When a machine is open: weekly shifts less breaks and closures, plus overtime. */
export const calendar = z.strictObject({
  id: code,
  name,
  shifts: z.array(shift).max(30, 'at most 30'),
  /** Whole days closed, both ends included. */
  closures: z
    .array(
      z
        .strictObject({ name, from: localDate, to: localDate })
        .refine((c) => c.from <= c.to, { message: 'must not end before it starts', path: ['to'] }),
    )
    .max(1000, 'at most 1000'),
  /** Extra open hours on one date; they hold even on a closed day. */
  overtime: z
    .array(z.strictObject({ name, date: localDate, ...span }).refine((s) => s.start < s.end, forward))
    .max(5000, 'at most 5000'),
  revision,
});
export type Calendar = DeepReadonly<z.infer<typeof calendar>>;

/** Whether a machine that keeps it is ever open, closures and downtimes aside. */
export const hasHours = ({ shifts, overtime }: Pick<Calendar, 'shifts' | 'overtime'>): boolean =>
  shifts.length > 0 || overtime.length > 0;

/** Breaks that do not lie in their own shift, at the field that names them: they would come off nothing, or off another's hours. */
export const strayBreaks = ({ shifts }: Pick<Calendar, 'shifts'>, subject: string): Issue[] =>
  shifts.flatMap((shift, i) =>
    shift.breaks.flatMap(({ start, end }, k) =>
      start >= shift.start && end <= shift.end
        ? []
        : issue(
            subject,
            `shifts.${i}.breaks.${k}.start`,
            `The break from ${start} to ${end} is not within its shift, ${shift.start} to ${shift.end}.`,
            'Move it into the shift, or remove it.',
          ),
    ),
  );
