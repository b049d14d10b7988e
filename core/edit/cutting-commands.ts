import { sameMetal } from '../planning/runs.ts';
import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf } from '../planning/operations.ts';
import { operationIdOf, type OrderLine, usualLine, usualOrder, type WorkOrder } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';
import { NO_EXTRA_BLANKS } from '../part/extra-blanks.ts';
import { formatCutLength, type Units } from '../units/length.ts';
import type { Command } from './command.ts';
import { change, withChanges, type RowChange, type Edit } from '../shop/row-change.ts';
import { queueChanges } from './queue-rows.ts';
import { refuseStale } from './stale.ts';

/** Keep a run's step list as a person changed it. */
export function saveCutList(shop: Shop, list: CutList, label: string): Result<Edit> {
  const before = shop.cutList.find((c) => c.id === list.id) ?? null;
  const stale = refuseStale('cutList', `step list of ${list.id}`, before, list);
  if (stale) return stale;
  return ok({ label, changes: [change('cutList', before, list)] });
}

/** Give up a changed list: the run is planned again. */
export function removeCutList(shop: Shop, id: string): Result<Edit> {
  const list = shop.cutList.find((c) => c.id === id);
  if (!list)
    return err(
      issue(`run ${id}`, 'steps', `The steps of run ${id} were not changed.`, 'There is nothing to give up.'),
    );
  return ok({ label: `Plan the steps of run ${id} again`, changes: [change('cutList', list, null)] });
}

type WalkIn = Extract<Command, { do: 'walkin.take' }>;

/**
 * Flat pieces for someone at the counter: a flat part of that girth, a work order of its own, and a place in the shear's
 * queue behind the last line of the same metal, so that it joins that run.
 * @returns the edit; or what of the metal is not there
 */
export function takeWalkIn(shop: Shop, cut: WalkIn): Result<Edit> {
  const material = shop.material.find((m) => m.id === cut.materialId);
  if (!material?.gauges.some((g) => g.label === cut.gauge) || !shop.colour.some((c) => c.id === cut.colourId))
    return err(
      issue(
        'walk-in',
        'metal',
        'There is no such material, gauge and colour.',
        'Choose one of those in Shop, Materials and Shop, Colours.',
      ),
    );
  const last = Math.max(0, ...shop.order.map(({ id }) => Number(/^walk-in-(\d+)$/.exec(id)?.[1] ?? 0)));
  const number = cut.number ?? last + 1;
  const orderId = `walk-in-${number}`;
  const part = flatPart(cut.girthMm, cut.lengthMm, shop.settings);
  const known = shop.part.some((p) => p.id === part.id);
  const order: WorkOrder = {
    ...usualOrder,
    id: orderId,
    customer: 'Walk-in',
    due: cut.due,
    note: cut.text,
  };
  const line: OrderLine = {
    ...usualLine,
    id: `${orderId}/1`,
    orderId,
    number: 1,
    partId: part.id,
    materialId: cut.materialId,
    gauge: cut.gauge,
    colourId: cut.colourId,
    lengthMm: cut.lengthMm,
    quantity: cut.pieces,
  };
  const added: RowChange[] = [
    ...(known ? [] : [change('part', null, part)]),
    change('order', null, order),
    change('line', null, line),
  ];
  const queue = joinRun(withChanges(shop, added), line);
  return queue.ok
    ? ok({
        label: `Add a walk-in cut of ${cut.pieces} as ${orderId}`,
        changes: [...added, ...queue.value],
      })
    : queue;
}

/** One part for each girth, to the tenth of a millimetre. */
function flatPart(girthMm: number, lengthMm: number, units: Units): Part {
  const girth = Math.round(girthMm * 100) / 100;
  return {
    id: `flat-${girth}`,
    name: `Flat ${formatCutLength(girth, units)}`,
    profile: {
      flangesMm: [girth],
      bends: [],
      startHem: null,
      endHem: null,
      measured: 'outside',
      paintedSide: 'up',
    },
    lengthMm,
    bendOrder: null,
    family: null,
    extraBlanks: NO_EXTRA_BLANKS,
    steps: [],
    note: 'Cut at the counter.',
    revision: 0,
  };
}

function joinRun(shop: Shop, line: OrderLine): Result<RowChange[]> {
  const { operations, unplannable } = operationsOf(shop);
  const id = operationIdOf(line.id, 'shear');
  const operation = operations.find((o) => o.id === id);
  if (!operation) return err(...unplannable.filter((p) => p.subject === `line ${line.id}`));
  const byId = new Map(operations.map((o) => [o.id, o]));
  const queues = completeQueues(shop, operations);
  const ofThisMetal = (other: string): boolean => {
    const queued = byId.get(other)?.line;
    return queued !== undefined && sameMetal(queued, line);
  };
  const machines = operation.machines.map((m) => m.id);
  const host = machines.find((m) => queues[m]?.some((o) => o !== id && ofThisMetal(o)));
  if (host === undefined) return ok([]);
  const rest = (queues[host] ?? []).filter((o) => o !== id);
  const first = rest.findIndex(ofThisMetal);
  let end = first;
  while (end < rest.length && ofThisMetal(rest[end] as string)) end += 1;
  const placed = [...rest.slice(0, end), id, ...rest.slice(end)];
  return ok(queueChanges(shop, operations, { ...queues, [host]: placed }, [host]));
}
