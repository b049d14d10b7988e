import { operationsOf, piecesFor, routingOf, type ShopOperation } from '../planning/operations.ts';
import { lineOfOperation, operationIdOf, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { isSuspended, leftAt } from '../planning/started.ts';
import type { Command } from './command.ts';
import { operationName, refuseMachine, unknownOperation } from './plan-commands.ts';
import { change, type Edit } from '../shop/row-change.ts';

/** What a floor command of a name carries. */
export type FloorCommand<K extends Command['do']> = Extract<Command, { readonly do: K }>;
type Refusal = Result<never> | null;

/** Refuse something about an operation. */
export const refuse = (id: string, field: string, message: string, advice: string): Result<never> =>
  err(issue(operationName(id), field, message, advice));

/**
 * Work on an operation begins. Refused while the machine has another one under way, before the step before has left
 * enough pieces, or before the machine was free. The machine's place in the plan follows: started work comes first.
 */
export function startOperation(shop: Shop, command: FloorCommand<'floor.start'>): Result<Edit> {
  const { operation: id, machineId, at, changeoverSeconds } = command;
  const operation = operationsOf(shop).operations.find((o) => o.id === id);
  if (!operation) return unknownOperation(id);
  const refusal =
    refuseStarted(operation) ??
    refuseMachine(shop, operation, machineId) ??
    refuseBusy(shop, machineId, at) ??
    whyNotYet(shop, operation, at);
  if (refusal) return refusal;
  const { partId, materialId, gauge, colourId, lengthMm } = operation.line;
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
    changeoverSeconds,
    pauses: [],
    estimatedSeconds: operation.machines.find((m) => m.id === machineId)?.seconds ?? 0,
    revision: 0,
  };
  return ok({
    label: `Start ${operationName(id)} on ${machineId}`,
    changes: [change('record', null, record)],
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

/** One operation at a time, and none from before the machine was free. */
function refuseBusy(shop: Shop, machineId: string, at: number): Refusal {
  const own = shop.record.filter((r) => r.machineId === machineId);
  const running = own.find((r) => leftAt(r) === null);
  if (running)
    return refuse(
      running.id,
      'machine',
      `${operationName(running.id)} is still under way on ${machineId}.`,
      'Report it done first, or pause and suspend it.',
    );
  const last = own.find((r) => (leftAt(r) ?? at) > at);
  if (!last) return null;
  return refuse(
    last.id,
    'start',
    `${machineId} was at work on ${operationName(last.id)} until ${wall(shop, leftAt(last) ?? at)}.`,
    'Give a later start.',
  );
}

/** Why an operation cannot begin yet, since the step before has not left the pieces for it; null when it can. */
export function whyNotYet(shop: Shop, { id, line, part, stage }: ShopOperation, at: number): Refusal {
  if (stage === 'shear' || !routingOf(part).includes('shear')) return null;
  const before = shop.record.find((r) => r.id === operationIdOf(line.id, 'shear'));
  const share = shop.settings.transferShare;
  if (!before)
    return refuse(id, 'start', `The blanks of line ${line.id} are not sheared yet.`, 'Shear them first.');
  if (isSuspended(before))
    return refuse(id, 'start', `The shearing of line ${line.id} is suspended.`, 'Resume it first.');
  if (before.start > at || (before.end !== null && before.end > at && share === 1))
    return refuse(
      id,
      'start',
      `The blanks of line ${line.id} were not there yet at ${wall(shop, at)}.`,
      'Give a later start.',
    );
  if (before.end !== null) return null;
  const lot = Math.ceil(share * before.quantity);
  if (share < 1 && before.good >= lot) return null;
  return refuse(
    id,
    'start',
    `${before.good} of ${before.quantity} blanks of line ${line.id} are sheared; bending starts with ${lot}.`,
    'Count the blanks at the shear, or report the shearing done.',
  );
}

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
      'Undo that first if it was a slip.',
    );
  return ok({ ...record, end: null });
}

/** Work stands still for a reason; the machine stays with the operation until it is set aside. */
export function pauseOperation(shop: Shop, command: FloorCommand<'floor.pause'>): Result<Edit> {
  const { operation: id, at, reason } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  if (standing(record))
    return refuse(id, 'pause', `${operationName(id)} is paused already.`, 'Resume it first.');
  const early = refuseEarly(shop, record, at);
  if (early) return early;
  const pauses = [...record.pauses, { from: at, to: null, reason: reason.trim() }];
  return ok({
    label: `Pause ${operationName(id)}`,
    changes: [change('record', record, { ...record, pauses })],
  });
}

export function resumeOperation(shop: Shop, command: FloorCommand<'floor.resume'>): Result<Edit> {
  const { operation: id, at } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  if (!standing(record))
    return refuse(id, 'pause', `${operationName(id)} is not paused.`, 'There is nothing to resume.');
  const refusal =
    refuseEarly(shop, record, at) ?? (isSuspended(record) ? refuseBusy(shop, record.machineId, at) : null);
  if (refusal) return refusal;
  return ok({
    label: `Resume ${operationName(id)}`,
    changes: [change('record', record, { ...record, pauses: pausesUntil(record, at) })],
  });
}

/** Pieces finished so far. Spoiled ones may be replaced at once, so only the good ones are held against the quantity. */
export function countPieces(shop: Shop, command: FloorCommand<'floor.count'>): Result<Edit> {
  const { operation: id, good: fine, scrapped } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const refusal = refuseTooMany(record, piecesOf(shop, record), fine);
  if (refusal) return refusal;
  const same = record.good === fine && record.scrapped === scrapped;
  return ok({
    label: `Count ${fine} good, ${scrapped} scrapped of ${operationName(id)}`,
    changes: same ? [] : [change('record', record, { ...record, good: fine, scrapped })],
  });
}

/**
 * Pieces that an operation under way has to make: what its line asks now, less what the step before has scrapped; no fewer
 * than are counted as good, for those are made. Of a line that is gone, what it began with.
 */
export function piecesOf(shop: Shop, { id, quantity, good: fine }: OperationRecord): number {
  const lineId = lineOfOperation(id);
  const asked = shop.line.find((line) => line.id === lineId)?.quantity ?? quantity;
  const records = new Map(shop.record.map((r) => [r.id, r]));
  return Math.max(fine, piecesFor({ id: lineId, quantity: asked }, stageOfOperation(id), records));
}

export function refuseTooMany({ id }: OperationRecord, pieces: number, fine: number): Refusal {
  if (fine <= pieces) return null;
  return refuse(
    id,
    'good',
    `${operationName(id)} makes ${pieces} pieces, so ${fine} cannot be good.`,
    `Count at most ${pieces}; change the quantity in Orders first if more are wanted.`,
  );
}

/** Whether work is paused now. */
export const standing = ({ pauses }: Pick<OperationRecord, 'pauses'>): boolean => pauses.at(-1)?.to === null;

/** The pauses with the last one over. */
export const pausesUntil = ({ pauses }: OperationRecord, at: number): OperationRecord['pauses'] =>
  pauses.map((pause) => (pause.to === null ? { ...pause, to: at } : pause));

/** Nothing happens before what was recorded last. */
export function refuseEarly(shop: Shop, { id, start, pauses }: OperationRecord, at: number): Refusal {
  const last = pauses.at(-1);
  const [since, what] = last
    ? [last.to ?? last.from, last.to === null ? 'was paused' : 'was resumed']
    : [start, 'was started'];
  if (at >= since) return null;
  return refuse(
    id,
    'time',
    `${operationName(id)} ${what} at ${wall(shop, since)}; ${wall(shop, at)} is before that.`,
    'Give a later time.',
  );
}

const wall = ({ settings: { timeZone } }: Shop, at: number): string => formatDayAndClock(at, timeZone);
