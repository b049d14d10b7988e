import { estimateBrake } from '../../core/estimate/brake.ts';
import { estimateShear } from '../../core/estimate/shear.ts';
import { blankOf } from '../../core/part/blank.ts';
import { blankBasisOf } from '../../core/part/forming.ts';
import { hits } from '../../core/part/girth.ts';
import type { OpenInterval } from '../../core/schedule/working-time.ts';
import type { Machine } from '../../core/shop/machine.ts';
import { operationIdOf, type OrderLine } from '../../core/shop/order.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import { sentence, type Result } from '../../core/result.ts';
import type { Settings } from '../../core/shop/settings.ts';
import { openIntervals } from '../../core/time/working-time.ts';
import { instant } from '../../core/units/brand.ts';
import type { Catalogue } from '../read.ts';
import type { Rng } from './rng.ts';

/**
 * What the floor did, invented: lines go through the shear and a brake in the machines' open hours, each taking its
 * estimate times the machine's own bias and a log-normal scatter. The biases are what learning should find again.
 */

export const BIAS: Readonly<{ [machineId: string]: number }> = { S1: 1.05, B1: 1.12, B2: 0.94 };
const SCATTER = 0.16;
/** Shares of operations that went badly wrong, or whose start was written down too late. */
const STUCK = 0.032;
const STAMPED_LATE = 0.008;

export interface Floor {
  readonly settings: Settings;
  readonly catalogue: Catalogue;
  readonly rng: Rng;
  /** Per machine id: its open hours and the instant from which it is free. */
  readonly machines: Map<string, { readonly open: readonly OpenInterval[]; free: number }>;
}

/** A line to make, from an instant on; `bend` false stops after the shear. */
export interface Job {
  readonly line: Pick<
    OrderLine,
    'id' | 'partId' | 'materialId' | 'gauge' | 'colourId' | 'lengthMm' | 'quantity'
  >;
  readonly from: number;
  readonly bend: boolean;
}

const sure = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};

const sureOf = <T>(item: T | undefined, what: string): T => {
  if (item === undefined) throw new Error(`the demo shop has no ${what}`);
  return item;
};

/** A floor on which every machine is free from the first open minute of [from, to). */
export function openFloor(
  settings: Settings,
  catalogue: Catalogue,
  rng: Rng,
  from: number,
  to: number,
): Floor {
  const machines = catalogue.machine.map((machine) => {
    const calendar = sureOf(
      catalogue.calendar.find((c) => c.id === machine.calendarId),
      machine.calendarId,
    );
    const open = sure(openIntervals(calendar, [], settings.timeZone, instant(from), instant(to)));
    return [machine.id, { open, free: from }] as const;
  });
  return { settings, catalogue, rng, machines: new Map(machines) };
}

/** The first open instant at or after `at`, and the end of `seconds` of open time from there; null past the last hour. */
function spend(
  open: readonly OpenInterval[],
  at: number,
  seconds: number,
): { start: number; end: number } | null {
  let start: number | null = null;
  let left = seconds;
  for (const hours of open) {
    if (hours.end <= at) continue;
    const from = Math.max(hours.start, at);
    start ??= from;
    if (left <= hours.end - from) return { start, end: from + left };
    left -= hours.end - from;
  }
  return null;
}

function actualSeconds(estimated: number, machineId: string, rng: Rng): number {
  const usual = estimated * (BIAS[machineId] ?? 1) * Math.exp(SCATTER * rng.normal());
  const luck = rng.next();
  if (luck < STUCK) return Math.round(usual * (1.8 + 1.2 * rng.next()));
  return Math.round(luck < STUCK + STAMPED_LATE ? usual * 0.4 : usual);
}

/** One operation on one machine, after a changeover of a few minutes; null when the hours run out. */
function work(
  floor: Floor,
  job: Job,
  machine: Machine,
  ready: number,
  estimated: number,
): OperationRecord | null {
  const state = sureOf(floor.machines.get(machine.id), machine.id);
  const changeover = spend(state.open, Math.max(state.free, job.from), 60 * floor.rng.whole(3, 12));
  const done =
    changeover &&
    spend(state.open, Math.max(ready, changeover.end), actualSeconds(estimated, machine.id, floor.rng));
  if (!done) return null;
  state.free = done.end;
  const { id, ...what } = job.line;
  const scrapped = floor.rng.chance(machine.stage === 'brake' ? 0.3 : 0.06) ? floor.rng.whole(1, 2) : 0;
  return {
    id: operationIdOf(id, machine.stage),
    machineId: machine.id,
    ...what,
    good: job.line.quantity,
    scrapped,
    ...done,
    changeoverSeconds: null,
    who: [],
    pauses: [],
    estimatedSeconds: estimated,
    revision: 0,
  };
}

/** Carries jobs through the shop in the order given; work that the hours no longer hold is left out. */
export function runFloor(floor: Floor, jobs: readonly Job[]): OperationRecord[] {
  const { material, part, sheet, machine: machines } = floor.catalogue;
  const basis = blankBasisOf({ settings: floor.settings, machine: machines, tool: floor.catalogue.tool });
  const freeAt = (machine: Machine): number => floor.machines.get(machine.id)?.free ?? 0;
  return jobs.flatMap((job) => {
    const { line } = job;
    const metal = sureOf(
      material.find((m) => m.id === line.materialId),
      line.materialId,
    );
    const gauge = sureOf(
      metal.gauges.find((g) => g.label === line.gauge),
      line.gauge,
    );
    const made = sureOf(
      part.find((p) => p.id === line.partId),
      line.partId,
    );
    const blank = sure(blankOf(line, made, metal, gauge, basis));
    const shear = sureOf(
      machines.find((m) => m.stage === 'shear'),
      'shear',
    );
    const stock = sureOf(
      sheet.find((s) => s.lengthMm >= line.lengthMm),
      'sheet',
    );
    const cut = sure(
      estimateShear({ blank, quantity: line.quantity, sheet: stock, machine: shear, units: basis.units }),
    );
    const sheared = work(floor, job, shear, job.from, cut.seconds);
    if (!sheared?.end || !job.bend || hits(made.profile) === 0) return sheared ? [sheared] : [];
    const brakes = machines.filter((m) => m.stage === 'brake' && (m.maxLengthMm ?? 0) >= line.lengthMm);
    const brake = sureOf(brakes.sort((a, b) => freeAt(a) - freeAt(b))[0], 'brake');
    const bend = estimateBrake({ part: made, blank, quantity: line.quantity, machine: brake });
    const bent = work(floor, job, brake, sheared.end, bend.seconds);
    return bent ? [sheared, bent] : [sheared];
  });
}
