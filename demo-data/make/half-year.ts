import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Settings } from '../../core/shop/settings.ts';
import { formatClock, shiftDate, toInstant, wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { inchesToMm } from '../../core/units/length.ts';
import type { Catalogue } from '../read.ts';
import { openFloor, runFloor, type Job } from './history.ts';
import { lineCounts, orderLines, type OrderRow } from './orders.ts';
import type { Rng } from './rng.ts';

/** The columns of finished.csv. */
export const finishedColumns = [
  'operation',
  'machine',
  'part',
  'material',
  'gauge',
  'colour',
  'length',
  'quantity',
  'good',
  'scrapped',
  'start',
  'end',
  'estimate s',
] as const;

const WEEKS = 26;
const ORDERS_A_WEEK = 17;
const FIRST_NUMBER = 3601;

const lineOf = (row: OrderRow): Job['line'] => ({
  id: `${row.order}/${row.line}`,
  partId: String(row.part),
  materialId: String(row.material),
  gauge: String(row.gauge),
  colourId: String(row.colour),
  lengthMm: inchesToMm(Number(row.length)),
  quantity: Number(row.quantity),
});

const runKey = ({ line }: Job): string => `${line.materialId} ${line.gauge} ${line.colourId} ${line.id}`;

/** One past week's jobs, sheared in runs of equal metal and colour. */
function weekOfJobs(week: number, from: number, rng: Rng): Job[] {
  const counts = lineCounts(ORDERS_A_WEEK, rng.whole(42, 50), rng);
  return counts
    .flatMap((count, index) => {
      const order = String(FIRST_NUMBER + week * ORDERS_A_WEEK + index);
      const head = { order, customer: '', 'not before': '', due: '', importance: 1, rush: '', note: '' };
      return orderLines(head, count, rng).map((row) => ({ line: lineOf(row), from, bend: true }));
    })
    .sort((a, b) => (runKey(a) < runKey(b) ? -1 : 1));
}

/**
 * Half a year of finished operations up to the anchor Monday; last of all the late orders' blanks, which were cut on
 * the Friday and wait for a brake.
 */
export function halfYear(
  settings: Settings,
  catalogue: Catalogue,
  monday: string,
  waiting: readonly OrderRow[],
  rng: Rng,
): OperationRecord[] {
  const at = (days: number, clock: string): number =>
    toInstant(shiftDate(monday, days), clock, settings.timeZone);
  const floor = openFloor(settings, catalogue, rng, at(-7 * WEEKS, '00:00'), at(0, '00:00'));
  const past = Array.from({ length: WEEKS }, (_, week) =>
    weekOfJobs(week, at(7 * (week - WEEKS), '06:30'), rng),
  ).flat();
  const cutOnly = waiting.map((row) => ({ line: lineOf(row), from: at(-3, '06:30'), bend: false }));
  return runFloor(floor, [...past, ...cutOnly]);
}

/** A record as a row of finished.csv: clock times to the minute, as they are written on a ticket. */
export function finishedRow(record: OperationRecord, timeZone: string) {
  const clock = (at: number): string => {
    const minute = instant(60 * Math.round(at / 60));
    return `${wallParts(minute, timeZone).date} ${formatClock(minute, timeZone)}`;
  };
  return {
    operation: record.id,
    machine: record.machineId,
    part: record.partId,
    material: record.materialId,
    gauge: record.gauge,
    colour: record.colourId,
    length: Math.round(record.lengthMm / 25.4),
    quantity: record.quantity,
    good: record.good,
    scrapped: record.scrapped,
    start: clock(record.start),
    end: clock(record.end ?? record.start),
    'estimate s': record.estimatedSeconds,
  };
}
