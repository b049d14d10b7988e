import { NO_EXTRA_BLANKS } from '../part/extra-blanks.ts';
import type { Part } from '../part/part.ts';
import type { Machine } from '../shop/machine.ts';
import { isElsewhere, stage } from '../part/stage.ts';
import { hoursAround } from '../planning/machine-inputs.ts';
import { operationsOf } from '../planning/operations.ts';
import { recordBefore, stepAt } from '../planning/routing.ts';
import { attributesOn } from '../planning/set-up.ts';
import { workedSeconds } from '../planning/started.ts';
import {
  lineOfOperation,
  stageOfOperation,
  type OrderLine,
  usualLine,
  usualOrder,
  type WorkOrder,
} from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { countIn, probe, timeStandards, type Counts } from './counts.ts';
import type { ChangeoverObservation } from './learn-changeover.ts';
import { byTime, type Observation } from './observation.ts';
import { openSecondsBetween, type WorkingTime } from '../schedule/working-time.ts';

type Ended = OperationRecord & { readonly end: number };
const ended = (record: OperationRecord): record is Ended => record.end !== null;

/** What finished operations say to learning. */
export interface Happened {
  readonly observations: readonly Observation[];
  /** Ids of finished operations that the shop as it is now cannot estimate (part, gauge or machine gone or changed). */
  readonly left: readonly string[];
}

/**
 * Finished operations as observations: what each was made of by today's parts, stock and estimates, and how many open
 * seconds of its machine it took, pauses left out (core/planning/started.ts). Operations under way do not count.
 * @param records any of the shop's, any order
 */
export function observationsOf(shop: Shop, records: readonly OperationRecord[]): Happened {
  const parts = new Map(shop.part.map((part) => [part.id, part]));
  const finished = records.filter(ended).filter((record) => isByStandards(record, parts.get(record.partId)));
  const counts = countsOf(shop, finished);
  const hours = hoursOf(shop, finished);
  const observations: Observation[] = [];
  const left: string[] = [];
  for (const { id, machineId, start, end, pauses } of finished) {
    const counted = counts.get(`${id} on ${machineId}`);
    const open = hours.get(machineId);
    if (counted && open)
      observations.push({
        id,
        machineId,
        at: start,
        counts: counted,
        actualSeconds: workedSeconds({ start, end, pauses }, end, open),
      });
    else left.push(id);
  }
  return { observations, left };
}

/** Counts by operation and machine, from the shop as if the operations' lines were open again. */
function countsOf(shop: Shop, finished: readonly Ended[]): ReadonlyMap<string, Counts> {
  const counts = new Map<string, Record<string, number>>();
  for (const at of stage.options) {
    const again = reopened(
      shop,
      finished.filter(({ id }) => stageOfOperation(id) === at),
    );
    const has = (machine: Machine, key: string): boolean =>
      machine.stage === at && timeStandards(machine).some((s) => s.key === key);
    const keys = shop.machine.flatMap((m) => (m.stage === at ? timeStandards(m).map((s) => s.key) : []));
    for (const key of new Set(keys)) {
      const machine = again.machine.map((m) => (has(m, key) ? probe(m, key) : m));
      const probed = new Set(machine.filter((m) => has(m, key)).map((m) => m.id));
      for (const operation of operationsOf({ ...again, machine }).operations)
        for (const able of operation.machines.filter((a) => probed.has(a.id))) {
          const place = `${operation.id} on ${able.id}`;
          counts.set(place, { ...counts.get(place), [key]: countIn(able.estimate) });
        }
    }
  }
  return counts;
}

/** How long others take is no matter of our standards, nor is the time of its own that a part gives a step. */
function isByStandards({ id }: Ended, part: Part | undefined): boolean {
  const at = stageOfOperation(id);
  return !isElsewhere(at) && (part === undefined || (stepAt(part, at)?.secondsPerPiece ?? null) === null);
}

/** The shop with lines for what was done of one stage, exactly as many pieces as were worked on there. */
function reopened(shop: Shop, finished: readonly Ended[]): Shop {
  const order: WorkOrder = {
    ...usualOrder,
    id: 'finished',
    customer: 'finished work',
    due: 0,
  };
  const lines = new Map(
    finished.map(({ id, partId, materialId, gauge, colourId, lengthMm, quantity }, index) => {
      const what = { partId, materialId, gauge, colourId, lengthMm, quantity };
      const line: OrderLine = {
        ...usualLine,
        id: lineOfOperation(id),
        orderId: order.id,
        number: index + 1,
        ...what,
      };
      return [line.id, line] as const;
    }),
  );
  return {
    ...shop,
    ...{ order: [order], line: [...lines.values()], record: [] },
    settings: { ...shop.settings, extraBlanks: NO_EXTRA_BLANKS },
    part: shop.part.map((part) => ({ ...part, extraBlanks: null })),
  };
}

/** Open hours of each machine over all that was finished. */
function hoursOf(shop: Shop, finished: readonly Ended[]): ReadonlyMap<string, WorkingTime> {
  const from = finished.reduce((least, r) => Math.min(least, r.start), Infinity);
  const to = finished.reduce((most, r) => Math.max(most, r.end), -Infinity);
  if (finished.length === 0) return new Map();
  return new Map(shop.machine.map((machine) => [machine.id, hoursAround(shop, machine, from, to)]));
}

/**
 * Changeovers as far as records show them: as timed on the floor; where it was not timed, the gap between two operations on a machine, where something changed, no
 * closed hours lie between, and the pieces were waiting (the step before was done before the machine got free), so that the gap was not
 * spent waiting for them. The shear's sheets are taken to be at hand. Named exceptions are left out.
 * @returns by time
 */
export function changeoversOf(shop: Shop, records: readonly OperationRecord[]): ChangeoverObservation[] {
  const finished = records.filter(ended);
  const hours = hoursOf(shop, finished);
  const byId = new Map(finished.map((r) => [r.id, r]));
  const waiting = ({ id }: Ended, since: number): boolean =>
    (recordBefore((other) => byId.get(other), id)?.end ?? -Infinity) <= since;
  const machines = shop.machine.filter(({ stage: at }) => !isElsewhere(at));
  return machines.flatMap((machine) => {
    const open = hours.get(machine.id);
    const queue = finished
      .filter((r) => r.machineId === machine.id)
      .sort((a, b) => byTime({ id: a.id, at: a.start }, { id: b.id, at: b.start }));
    let last = queue[0]!;
    return queue.slice(1).flatMap((next): ChangeoverObservation[] => {
      // Work that was set aside for other work goes on after it, and is what the machine is set up for then.
      const before = last;
      if (next.end > last.end) last = next;
      const timed = next.changeoverSeconds;
      const seconds = timed ?? next.start - before.end;
      const unbroken = open !== undefined && openSecondsBetween(open, before.end, next.start) === seconds;
      const kinds = kindsBetween(shop, machine, before, next);
      if (kinds === null || kinds.length === 0) return [];
      const seen = seconds >= 0 && unbroken && waiting(next, before.end);
      if (timed === null && !seen) return [];
      return [{ id: next.id, machineId: machine.id, at: next.start, kinds, seconds }];
    });
  });
}

/** Attributes that differ; null where a named exception prices one of them. */
function kindsBetween(
  shop: Shop,
  machine: Machine,
  before: OperationRecord,
  next: OperationRecord,
): ChangeoverObservation['kinds'] | null {
  const [from, to] = [attributesOn(shop, machine, before), attributesOn(shop, machine, next)];
  const kinds = (Object.keys(to) as (keyof typeof to)[]).filter((kind) => from[kind] !== to[kind]);
  const named = machine.changeover.exceptions.some(
    (e) => from[e.attribute] === e.from && to[e.attribute] === e.to,
  );
  return named ? null : kinds;
}
