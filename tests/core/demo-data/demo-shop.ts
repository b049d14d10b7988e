import { fileURLToPath } from 'node:url';
import { loadDemo } from '../../../demo-data/load.ts';
import { openIntervals } from '../../../core/time/working-time.ts';
import { toInstant } from '../../../core/time/wall.ts';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';

export const root = fileURLToPath(new URL('../../../demo-data/', import.meta.url));
export const zone = 'America/Chicago';
/** The Monday that the shop's files are written around, before the first shift. */
export const monday: Instant = toInstant('2026-11-23', '06:00', zone);
export const demoShop = (now: Instant = monday): Shop => loadDemo(`${root}shop`, now);

/** Open hours of a machine in [from, to), downtime taken off. */
export function hoursOf(shop: Shop, machineId: string, from: number, to: number): OpenInterval[] {
  const machine = shop.machine.find((m) => m.id === machineId)!;
  const calendar = shop.calendar.find((c) => c.id === machine.calendarId)!;
  const downtimes = shop.downtime.filter((d) => d.machineId === machineId);
  const open = openIntervals(calendar, downtimes, shop.settings.timeZone, instant(from), instant(to));
  if (!open.ok) throw new Error(sentence(open.issues));
  return open.value;
}

/** Seconds of [from, to) that lie in the open hours. */
export const openSeconds = (hours: readonly OpenInterval[], from: number, to: number): number =>
  hours.reduce((sum, h) => sum + Math.max(0, Math.min(h.end, to) - Math.max(h.start, from)), 0);
