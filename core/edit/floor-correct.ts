import { comesAs, isElsewhere, shortStageName, stepDone, stepWord } from '../part/stage.ts';
import { recordAfter, recordBefore, recordIn } from '../planning/routing.ts';
import { spansOn } from '../planning/started.ts';
import { ok, type Result } from '../result.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { FloorCommand } from './floor-commands.ts';
import { piecesOf } from './floor-counts.ts';
import { thereFrom, wall } from './floor-times.ts';
import { operationName } from './plan-commands.ts';
import { refuse } from './refuse.ts';
import { remade } from './remake.ts';

type Correction = FloorCommand<'floor.correct'>;
type Refusal = Result<never> | null;

/**
 * What was recorded of an operation was wrong and is put right, with the reason. The record must still be one that can have
 * happened. Pieces that turn out missing are made again, those that turn out good are not.
 */
export function correctRecord(shop: Shop, command: Correction): Result<Edit> {
  const { operation: id, patch } = command;
  const record = shop.record.find((r) => r.id === id);
  if (!record)
    return refuse(
      id,
      'operation',
      `Nothing is recorded of ${operationName(id)}.`,
      'Start it on the Floor screen.',
    );
  const next: OperationRecord = { ...record, ...patch };
  const refusal =
    refuseState(record, patch) ??
    refuseTimes(shop, next, command.at) ??
    refuseMachineOf(shop, next) ??
    refuseBesideOthers(shop, next) ??
    refuseCounts(shop, record, next);
  if (refusal) return refusal;
  const own = change('record', record, next);
  const lines = remade(shop, record, next);
  if (!lines.ok) return lines;
  const said = wordsOf(shop, record, next);
  if (said.length === 0) return ok({ label: `Correct ${operationName(id)}`, changes: [] });
  return ok({
    label: `Correct ${operationName(id)}: ${said.join(', ')} (${command.reason.trim()})`,
    changes: [own, ...lines.value],
  });
}

/** Whether it is done is reported, not corrected: lines, stock and plans hang on it. */
function refuseState({ id, end }: OperationRecord, patch: Correction['patch']): Refusal {
  if (patch.end === undefined || (patch.end === null) === (end === null)) return null;
  const name = operationName(id);
  return end === null
    ? refuse(id, 'end', `${name} is still under way.`, 'Report it done instead.')
    : refuse(id, 'end', `${name} is done.`, 'Take back that it was reported done instead.');
}

function refuseTimes(shop: Shop, { id, start, end, pauses }: OperationRecord, now: number): Refusal {
  const name = operationName(id);
  const late = Math.max(start, end ?? start);
  if (late > now)
    return refuse(id, 'time', `${wall(shop, late)} is still to come.`, 'Give the time at which it happened.');
  if (end !== null && end < start)
    return refuse(
      id,
      'end',
      `${name} would end at ${wall(shop, end)}, before it starts at ${wall(shop, start)}.`,
      'Give a start and a later end.',
    );
  let since = start;
  for (const [k, { from, to }] of pauses.entries()) {
    const isOpen = to === null && end === null && k === pauses.length - 1;
    const until = to ?? (isOpen ? from : Infinity);
    if (from < since || until < from || (end !== null && until > end))
      return refuse(
        id,
        'pauses',
        `The pause of ${name} at ${wall(shop, from)} would lie outside its work, or in another pause.`,
        'Correct the pauses too.',
      );
    since = until;
  }
  return null;
}

function refuseMachineOf(shop: Shop, { id, machineId }: OperationRecord): Refusal {
  const stage = stageOfOperation(id);
  const machine = shop.machine.find((m) => m.id === machineId);
  if (machine?.stage === stage) return null;
  const able = shop.machine.filter((m) => m.stage === stage).map((m) => m.id);
  return refuse(
    id,
    'machine',
    machine ? `${machineId} is no ${shortStageName(stage)}.` : `There is no machine ${machineId}.`,
    `Choose one of ${able.join(', ')}.`,
  );
}

/** One operation at a time on a machine, but elsewhere, and no step before the one ahead of it. */
function refuseBesideOthers(shop: Shop, next: OperationRecord): Refusal {
  const { id, machineId } = next;
  const spans = isElsewhere(stageOfOperation(id)) ? [] : spansOn(next);
  const other = shop.record.find(
    (r) =>
      r.id !== id &&
      r.machineId === machineId &&
      spansOn(r).some((a) => spans.some((b) => a.start < b.end && b.start < a.end)),
  );
  if (other)
    return refuse(
      id,
      'time',
      `${machineId} was at work on ${operationName(other.id)} then, from ${wall(shop, other.start)}.`,
      'Give other times, or correct that record first.',
    );
  const [before, after] = [recordBefore(recordIn(shop), id), recordAfter(recordIn(shop), id)];
  return refuseTooSoon(shop, id, before, next) ?? refuseTooSoon(shop, id, next, after);
}

/** No step starts before the one ahead of it has its pieces there. */
function refuseTooSoon(
  shop: Shop,
  id: string,
  before: OperationRecord | undefined,
  after: OperationRecord | undefined,
): Refusal {
  const there = after ? thereFrom(shop, before, after.id) : null;
  if (!after || there === null || after.start >= there) return null;
  return refuse(
    id,
    'time',
    `${operationName(after.id)} started at ${wall(shop, after.start)}, before its ${comesAs(stageOfOperation(after.id))} were there at ${wall(shop, there)}.`,
    'Correct the other record first.',
  );
}

function refuseCounts(shop: Shop, record: OperationRecord, next: OperationRecord): Refusal {
  const { id, good: fine, scrapped, end } = next;
  if (fine === record.good && scrapped === record.scrapped) return null;
  const name = operationName(id);
  const pieces = end === null ? piecesOf(shop, { ...record, good: 0 }) : record.quantity;
  if (fine > pieces)
    return refuse(
      id,
      'good',
      `${name} makes ${pieces} pieces, so ${fine} cannot be good.`,
      `Count at most ${pieces}.`,
    );
  const accounted = Math.min(pieces, record.good + record.scrapped);
  if (end !== null && fine + scrapped < accounted)
    return refuse(
      id,
      'good',
      `${accounted - fine - scrapped} of ${pieces} pieces of ${name} would be neither good nor scrapped.`,
      'Count them as one or the other; scrapped ones are made again.',
    );
  const after = recordAfter(recordIn(shop), id);
  const used = after ? after.good + after.scrapped : 0;
  if (!after || fine >= used || end === null) return null;
  const stage = stageOfOperation(after.id);
  return refuse(
    id,
    'good',
    `${used} ${comesAs(stage)} of line ${lineOfOperation(id)} are ${stepDone[stage]} already, so ${fine} cannot be all that were good.`,
    `Correct the ${stepWord[stage]} first.`,
  );
}

function wordsOf(shop: Shop, before: OperationRecord, next: OperationRecord): string[] {
  const time = (at: number | null): string => (at === null ? 'none' : wall(shop, at));
  const told: [keyof OperationRecord, string][] = [
    ['machineId', `on ${next.machineId}`],
    ['start', `start ${time(next.start)}`],
    ['end', `end ${time(next.end)}`],
    ['good', `${next.good} good`],
    ['scrapped', `${next.scrapped} scrapped`],
    [
      'changeoverSeconds',
      next.changeoverSeconds === null
        ? 'changeover not known'
        : `changeover ${Math.round(next.changeoverSeconds / 60)} min`,
    ],
    ['pauses', `${next.pauses.length} ${next.pauses.length === 1 ? 'pause' : 'pauses'}`],
  ];
  return told.flatMap(([key, words]) =>
    JSON.stringify(before[key]) === JSON.stringify(next[key]) ? [] : [words],
  );
}
