import { z } from 'zod';
import type { Command } from '../../../core/edit/command.ts';
import { code, instantS, note } from '../../../core/fields.ts';
import type { Absence, Downtime } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { nextAbsenceId } from '../shop/calendars/absence-edit.ts';
import { nextDowntimeId } from '../shop/machines/machine-edit.ts';
import type { Trouble } from './what-if-view.ts';
import { HOUR } from '../../../core/units/duration.ts';

/** The hours of a trouble. */
const hoursEntries = z.strictObject({
  from: instantS,
  hours: z.number('how many hours?').positive('must be above 0').max(720, 'at most 720 hours, 30 days'),
  reason: note,
});
export type HoursEntries = z.infer<typeof hoursEntries>;

/** What the form holds for a machine that stands still. */
export const stoppedEntries = hoursEntries.extend({ machineId: code });
export type StoppedEntries = z.infer<typeof stoppedEntries>;

/** What the form holds where people are counted. */
export const peopleEntries = hoursEntries.extend({
  people: z.int('how many people?').min(1, 'at least one').max(500),
});
export type PeopleEntries = z.infer<typeof peopleEntries>;

export const troubleWords = {
  machine: { title: 'Machine down', who: 'Machine', reason: '' },
  operator: { title: 'Operator out', who: 'Whose machine', reason: 'Operator out' },
} as const;

const freshHours = (kind: Trouble['kind'], now: Instant): HoursEntries => ({
  from: now,
  hours: kind === 'machine' ? 4 : 8,
  reason: troubleWords[kind].reason,
});

/** A form filled in as far as can be guessed: from the present on, for half a shift or a whole one. */
export const freshStopped = (shop: Shop, { kind, machineId }: Trouble, now: Instant): StoppedEntries => ({
  machineId: machineId ?? shop.machine[0]?.id ?? '',
  ...freshHours(kind, now),
});

export const freshPeople = (now: Instant): PeopleEntries => ({ people: 1, ...freshHours('operator', now) });

const span = ({ from, hours, reason }: HoursEntries) => ({
  from,
  to: from + Math.round(hours * HOUR),
  reason,
  revision: 0,
});

/**
 * The machine stands still for these hours. Where people are not counted, an operator who is out stops the machine that
 * waits for him or her: which one that is, the planner knows best.
 */
export const downtimeOf = (shop: Shop, entries: StoppedEntries): Downtime => ({
  id: nextDowntimeId(shop, entries.machineId),
  machineId: entries.machineId,
  ...span(entries),
});

/** Where people are counted, so many fewer are at work for these hours, at whichever machine that is felt. */
export const absenceOf = (shop: Shop, entries: PeopleEntries): Absence => ({
  id: nextAbsenceId(shop),
  people: entries.people,
  ...span(entries),
});

/** Hours out of service that are not over. */
export const stoppedHours = (shop: Shop, now: number): Downtime[] =>
  shop.downtime.filter(({ to }) => to > now);

/** The machine is back now; a stop that has not begun is taken away. */
export const machineBack = (row: Downtime, now: Instant): Command =>
  row.from < now
    ? stoppedUntil(row, now)
    : { do: 'row.remove', kind: 'downtime', id: row.id, revision: row.revision };

/** @param to epoch seconds, after the stop began */
export const stoppedUntil = (row: Downtime, to: number): Command => ({
  do: 'row.save',
  kind: 'downtime',
  row: { ...row, to },
});

export const saveStopped =
  (shop: Shop) =>
  (entries: StoppedEntries): Command => ({
    do: 'row.save',
    kind: 'downtime',
    row: downtimeOf(shop, entries),
  });

export const savePeople =
  (shop: Shop) =>
  (entries: PeopleEntries): Command => ({ do: 'row.save', kind: 'absence', row: absenceOf(shop, entries) });
