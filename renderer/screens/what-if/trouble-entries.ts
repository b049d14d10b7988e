import { z } from 'zod';
import type { Command } from '../../../core/edit/command.ts';
import { code, instantS, note } from '../../../core/shop/fields.ts';
import type { Downtime } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { nextDowntimeId } from '../shop/machines/machine-edit.ts';
import type { Trouble } from './what-if-view.ts';

const HOUR = 3600;

/** What the form for a trouble holds. */
export const troubleEntries = z.strictObject({
  machineId: code,
  from: instantS,
  hours: z.number('how many hours?').positive('must be above 0').max(720, 'at most 720 hours, 30 days'),
  reason: note,
});
export type TroubleEntries = z.infer<typeof troubleEntries>;

export const troubleWords = {
  machine: { title: 'Machine down', who: 'Machine', reason: '' },
  operator: { title: 'Operator out', who: 'Whose machine', reason: 'Operator out' },
} as const;

/** A form filled in as far as can be guessed: from the present on, for half a shift or a whole one. */
export const freshTrouble = (shop: Shop, { kind, machineId }: Trouble, now: Instant): TroubleEntries => ({
  machineId: machineId ?? shop.machine[0]?.id ?? '',
  from: now,
  hours: kind === 'machine' ? 4 : 8,
  reason: troubleWords[kind].reason,
});

/**
 * The machine stands still for these hours. An operator who is out stops the machine that waits for him or her: which one
 * that is, the planner knows best.
 */
export const downtimeOf = (shop: Shop, { machineId, from, hours, reason }: TroubleEntries): Downtime => ({
  id: nextDowntimeId(shop, machineId),
  machineId,
  from,
  to: from + Math.round(hours * HOUR),
  reason,
  revision: 0,
});

export const saveTrouble =
  (shop: Shop) =>
  (entries: TroubleEntries): Command => ({
    do: 'row.save',
    kind: 'downtime',
    row: downtimeOf(shop, entries),
  });
