import { comesAs, isElsewhere, stepDone, stepWord } from '../part/stage.ts';
import { operationsOf, type ShopOperation } from '../planning/operations.ts';
import { inLots, stageBefore } from '../planning/routing.ts';
import { isSuspended, leftAt } from '../planning/started.ts';
import { operationIdOf, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { ok, type Result } from '../result.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { instant } from '../units/brand.ts';
import type { Command } from './command.ts';
import { momentOfChangeover, momentOfStart, momentOn, wall } from './floor-times.ts';
import { operationName, refuseMachine, unknownOperation } from './plan-commands.ts';
import { refuse } from './refuse.ts';

/** What a floor command of a name carries. */
export type FloorCommand<K extends Command['do']> = Extract<Command, { readonly do: K }>;
type Refusal = Result<never> | null;

/** A changeover begins: it stands with its machine until work starts there, so that a lost press loses no time. */
export function beginChangeover(shop: Shop, command: FloorCommand<'floor.changeover'>): Result<Edit> {
  const { operation: id, machineId, at } = command;
  const operation = operationsOf(shop).operations.find((o) => o.id === id);
  if (!operation) return unknownOperation(id);
  if (isElsewhere(operation.stage))
    return refuse(id, 'changeover', 'Nothing is changed over for outside work.', 'Start it when it is sent.');
  const refusal =
    refuseStarted(operation) ?? refuseMachine(shop, operation, machineId) ?? refuseBusy(shop, machineId);
  if (refusal) return refusal;
  const moment = momentOfChangeover(shop, machineId, at);
  if (!moment.ok) return moment;
  const before = shop.changeover.find((c) => c.id === machineId) ?? null;
  const row = { id: machineId, operation: id, since: instant(moment.value.at), revision: 0 };
  return ok({
    label: `Start the changeover of ${machineId} for ${operationName(id)}${moment.value.note}`,
    changes: [change('changeover', before, row)],
  });
}

/**
 * Work on an operation begins. Refused while the machine has another one under way, before the step before has left
 * enough pieces, or before the machine was free. The machine's place in the plan follows: started work comes first.
 */
export function startOperation(shop: Shop, command: FloorCommand<'floor.start'>): Result<Edit> {
  const { operation: id, machineId } = command;
  const operation = operationsOf(shop).operations.find((o) => o.id === id);
  if (!operation) return unknownOperation(id);
  const refusal =
    refuseStarted(operation) ??
    refuseMachine(shop, operation, machineId) ??
    refuseBusy(shop, machineId) ??
    whyNotYet(shop, operation);
  if (refusal) return refusal;
  const moment = momentOfStart(shop, id, machineId, command.at, command.given === true);
  if (!moment.ok) return moment;
  const { at, note } = moment.value;
  const { partId, materialId, gauge, colourId, lengthMm } = operation.line;
  const changingOver = shop.changeover.find((c) => c.id === machineId) ?? null;
  const since = changingOver?.operation === id ? changingOver.since : null;
  const record: OperationRecord = {
    id,
    machineId,
    partId,
    materialId,
    gauge,
    colourId,
    lengthMm,
    quantity: operation.quantity,
    good: 0,
    scrapped: 0,
    start: at,
    end: null,
    who: withName(shop, [], command.who),
    changeoverSeconds: command.changeoverSeconds ?? (since === null || since > at ? null : at - since),
    pauses: [],
    estimatedSeconds: operation.machines.find((m) => m.id === machineId)?.seconds ?? 0,
    revision: 0,
  };
  return ok({
    label: `Start ${operationName(id)} on ${machineId}${note}`,
    changes: [
      change('record', null, record),
      ...(changingOver ? [change('changeover', changingOver, null)] : []),
    ],
  });
}

/** The names on a record with one more: none while the shop does not ask, nobody twice. */
export const withName = (
  shop: Shop,
  who: OperationRecord['who'],
  name: string | undefined,
): OperationRecord['who'] =>
  name === undefined || !shop.settings.askWho || who.includes(name) ? who : [...who, name];

function refuseStarted({ id, started, suspended }: ShopOperation): Refusal {
  const under = started ?? suspended;
  if (!under) return null;
  return refuse(
    id,
    'start',
    `${operationName(id)} was already started on ${under.machineId}.`,
    suspended ? 'Resume it there.' : 'Count its pieces there, or report it done.',
  );
}

/** One operation at a time, but elsewhere. */
function refuseBusy(shop: Shop, machineId: string): Refusal {
  if (takesAny(shop, machineId)) return null;
  const running = shop.record.find((r) => r.machineId === machineId && leftAt(r) === null);
  if (!running) return null;
  return refuse(
    running.id,
    'machine',
    `${operationName(running.id)} is still under way on ${machineId}.`,
    'Report it done first, or pause and suspend it.',
  );
}

/**
 * Why an operation cannot begin yet, since the step before has not left the pieces for it; null when it can. Blanks that
 * are reported done are there, whatever a clock says.
 */
export function whyNotYet(shop: Shop, { id, line, part, stage }: ShopOperation): Refusal {
  const first = stageBefore(part, stage);
  if (first === null) return null;
  const [what, done] = [comesAs(stage), stepDone[first]];
  const before = shop.record.find((r) => r.id === operationIdOf(line.id, first));
  const share = inLots(first, stage) ? shop.settings.transferShare : 1;
  if (!before) {
    const advice = first === 'shear' ? 'Shear them first.' : `The ${stepWord[first]} comes first.`;
    return refuse(id, 'start', `The ${what} of line ${line.id} are not ${done} yet.`, advice);
  }
  if (isSuspended(before))
    return refuse(id, 'start', `The ${stepWord[first]} of line ${line.id} is suspended.`, 'Resume it first.');
  if (before.end !== null) return null;
  const lot = Math.ceil(share * before.quantity);
  if (share < 1 && before.good >= lot) return null;
  return refuse(
    id,
    'start',
    `${before.good} of ${before.quantity} ${what} of line ${line.id} are ${done}; ${stepWord[stage]} starts with ${lot}.`,
    first === 'shear'
      ? 'Count the blanks at the shear, or report the shearing done.'
      : `Report the ${stepWord[first]} done first.`,
  );
}

/** Does a machine take any number of operations at once? */
export const takesAny = (shop: Shop, machineId: string): boolean =>
  shop.machine.some(({ id, stage }) => id === machineId && isElsewhere(stage));

/** The record of an operation under way, or why there is none. */
export function underWay(shop: Shop, id: string): Result<OperationRecord & { readonly end: null }> {
  const record = shop.record.find((r) => r.id === id);
  if (!record)
    return refuse(id, 'start', `${operationName(id)} has not started.`, 'Start it on its machine first.');
  if (record.end !== null)
    return refuse(
      id,
      'end',
      `${operationName(id)} was done at ${wall(shop, record.end)}.`,
      'Take that back if it was a slip, or correct what was recorded.',
    );
  return ok({ ...record, end: null });
}

/** Work stands still for a reason; the machine stays with the operation until it is set aside. */
export function pauseOperation(shop: Shop, command: FloorCommand<'floor.pause'>): Result<Edit> {
  const { operation: id, reason } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  if (isElsewhere(stageOfOperation(id)))
    return refuse(id, 'pause', `${operationName(id)} is not paused here.`, 'Report it done when it is back.');
  if (standing(record))
    return refuse(id, 'pause', `${operationName(id)} is paused already.`, 'Resume it first.');
  const moment = momentOn(shop, record, command.at, false);
  if (!moment.ok) return moment;
  const { at, note } = moment.value;
  const pauses = [...record.pauses, { from: at, to: null, reason: reason.trim() }];
  return ok({
    label: `Pause ${operationName(id)}${note}`,
    changes: [change('record', record, { ...record, pauses })],
  });
}

/** Work goes on. What was suspended comes back to its machine, once that has no other work. */
export function resumeOperation(shop: Shop, command: FloorCommand<'floor.resume'>): Result<Edit> {
  const { operation: id } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  if (!standing(record))
    return refuse(id, 'pause', `${operationName(id)} is not paused.`, 'There is nothing to resume.');
  const busy = isSuspended(record) ? refuseBusy(shop, record.machineId) : null;
  if (busy) return busy;
  const moment = isSuspended(record)
    ? momentOfStart(shop, id, record.machineId, command.at, false)
    : momentOn(shop, record, command.at, false);
  if (!moment.ok) return moment;
  const { at, note } = moment.value;
  return ok({
    label: `Resume ${operationName(id)}${note}`,
    changes: [change('record', record, { ...record, pauses: pausesUntil(record, at) })],
  });
}

/** Whether work is paused now. */
export const standing = ({ pauses }: Pick<OperationRecord, 'pauses'>): boolean => pauses.at(-1)?.to === null;

/** The pauses with the last one over. */
export const pausesUntil = ({ pauses }: OperationRecord, at: number): OperationRecord['pauses'] =>
  pauses.map((pause) => (pause.to === null ? { ...pause, to: at } : pause));
