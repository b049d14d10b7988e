import { estimateBrake } from '../estimate/brake.ts';
import type { Estimate } from '../estimate/estimate.ts';
import { estimateAway, estimateBench } from '../estimate/further.ts';
import { estimateShear } from '../estimate/shear.ts';
import type { Blank } from '../part/blank.ts';
import type { Finding } from '../limits/finding.ts';
import { blankBasisOf } from '../part/forming.ts';
import { extraOf, NO_EXTRA, type Extra } from './blanks.ts';
import { findingsFor } from '../limits/eligibility.ts';
import type { ToolSet } from '../part/tool-set.ts';
import type { Attributes, Machine } from '../shop/machine.ts';
import { comesAs, shortStageName, STAGES, type Stage } from '../part/stage.ts';
import type { Sheet } from '../material/material.ts';
import { isSuspended, onlyWhereStarted, startedOf, type Eligible, type Started } from './started.ts';
import type { LineLot } from './line-lot.ts';
import type { MetalCover } from './metal-cover.ts';
import { pieceOf, type Piece } from './piece.ts';
import { piecesFor, routingOf, stepAt } from './routing.ts';
import { attributesOf, setUpOn, withTools } from './set-up.ts';
import { termsOf, type LineTerms } from '../shop/line-terms.ts';
import { operationIdOf, type OrderLine, type WorkOrder } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { Units } from '../units/length.ts';

/** A machine that can do an operation, its whole seconds there (changeover left out) and how they were made. */
interface Able {
  readonly id: string;
  readonly seconds: number;
  readonly estimate: Estimate;
  /** What someone should look at before it is run there. */
  readonly warnings: readonly Finding[];
  /** What a brake with tools on record sets up for it; null elsewhere. */
  readonly tools: ToolSet | null;
  /** What a changeover depends on there, the operation's own included. */
  readonly attributes: Attributes;
}

/** One step of an open line, still to be done or under way. */
export interface ShopOperation extends Eligible<Able> {
  readonly id: string;
  readonly stage: Stage;
  readonly line: OrderLine;
  readonly order: WorkOrder;
  readonly terms: LineTerms;
  readonly part: Part;
  readonly blank: Blank;
  /** The stock sheet its blanks are cut from. */
  readonly sheet: Sheet;
  /** The lot its blanks are cut from (core/planning/lots.ts); null: the shop keeps none, or it is not known. */
  readonly lot: LineLot | null;
  /** What it is cut from that is not in the shop yet (core/planning/lots.ts); null: sheared, or the shop expects no deliveries. */
  readonly metal: MetalCover | null;
  readonly attributes: Attributes;
  readonly people: number;
  /** Pieces to make: at the shear all blanks; at the brake the line's, less those scrapped on the step before. */
  readonly quantity: number;
  /** How many of them are cut beyond the line's pieces; none at the brake. */
  readonly extra: Extra;
  /** Of a step list kept for it: share of its time after which the brake may start. null: as the settings say. */
  readonly lotShare: number | null;
  /** What the floor has recorded of it; null until it begins, and while it is set aside. */
  readonly started: Started | null;
  /** What was recorded of it before it was set aside; null unless it is. */
  readonly suspended: Started | null;
}

export interface ShopOperations {
  /** In line order, each line's in the order of the work. */
  readonly operations: readonly ShopOperation[];
  /** Open lines that cannot be planned, each with its reason. */
  readonly unplannable: readonly Issue[];
}

/**
 * Every operation that the open work orders still need, with the machines that can do it.
 * Held, done and cancelled orders and lines ask for nothing; a finished operation (core/shop/plan.ts `record`) neither.
 */
export function operationsOf(shop: Shop): ShopOperations {
  const find = finder(shop);
  const operations: ShopOperation[] = [];
  const unplannable: Issue[] = [];
  for (const line of shop.line) {
    const order = find.order.get(line.orderId);
    if (!order || order.status !== 'open' || line.status !== 'open') continue;
    const steps = knownSteps(shop, find, order, line);
    if (steps.ok) operations.push(...steps.value);
    else unplannable.push(...steps.issues);
  }
  return { operations, unplannable };
}

/** Spare blanks that the shear, once done, has left to bend. */
function spareLeft(
  { setUp, spare }: Extra,
  { id, quantity }: OrderLine,
  records: ReadonlyMap<string, OperationRecord>,
): number {
  const sheared = records.get(operationIdOf(id, 'shear'));
  if (!sheared || sheared.end === null) return spare;
  return Math.min(spare, Math.max(0, sheared.good - quantity - setUp));
}

type Finder = ReturnType<typeof finder>;

function finder(shop: Shop) {
  const byId = <T extends { id: string }>(rows: readonly T[]) => new Map(rows.map((row) => [row.id, row]));
  return {
    order: byId(shop.order),
    part: byId(shop.part),
    material: byId(shop.material),
    record: byId(shop.record),
  };
}

/** What was computed of a line, and of which rows: most commands leave most lines as they are. */
const known = new WeakMap<
  OrderLine,
  { readonly of: readonly unknown[]; readonly steps: Result<ShopOperation[]> }
>();

function knownSteps(shop: Shop, find: Finder, order: WorkOrder, line: OrderLine): Result<ShopOperation[]> {
  const of = [
    ...[
      order,
      find.part.get(line.partId),
      shop.settings,
      shop.machine,
      shop.tool,
      shop.sheet,
      shop.material,
      shop.colour,
    ],
    ...STAGES.map((stage) => find.record.get(operationIdOf(line.id, stage))),
  ];
  const before = known.get(line);
  if (before?.of.every((row, i) => row === of[i])) return before.steps;
  const steps = stepsOf(shop, find, order, line);
  known.set(line, { of, steps });
  return steps;
}

function stepsOf(shop: Shop, find: Finder, order: WorkOrder, line: OrderLine): Result<ShopOperation[]> {
  const piece = pieceOf(shop, find.part.get(line.partId), find.material.get(line.materialId), line);
  if (!piece.ok) return piece;
  const steps: ShopOperation[] = [];
  for (const stage of routingOf(piece.value.part)) {
    const id = operationIdOf(line.id, stage);
    const record = find.record.get(id);
    const pieces = piecesFor(line, stage, find.record);
    if ((record && record.end !== null) || pieces === 0) continue;
    const beyond = extraOf(shop.settings, piece.value.part, pieces);
    const extra = stage === 'shear' ? beyond : NO_EXTRA;
    const quantity = pieces + extra.setUp + extra.spare;
    // The piece that a brake is set up with is timed with its changeover; those in place of spoiled ones are bent too.
    const spare = comesAs(stage) === 'blanks' ? spareLeft(beyond, line, find.record) : 0;
    const worked = stage === 'shear' ? quantity : pieces + spare;
    const found = machinesFor(shop, { ...line, quantity: worked }, piece.value, stage);
    const started = record ? startedOf(record) : null;
    const suspended = record && isSuspended(record) ? started : null;
    const able = found.ok && suspended ? onlyWhereStarted(id, suspended, found.value) : found;
    if (!able.ok) return able;
    const { machines, refused } = able.value;
    const { part, blank, sheet } = piece.value;
    steps.push({
      id,
      stage,
      line,
      order,
      terms: termsOf(order, line),
      part,
      blank,
      sheet,
      lot: null,
      metal: null,
      attributes: attributesOf(stage, line),
      machines,
      refused,
      people: Math.max(...machines.map((m) => m.estimate.people)),
      quantity,
      extra,
      lotShare: null,
      started: suspended ? null : started,
      suspended,
    });
  }
  return ok(steps);
}

function machinesFor(shop: Shop, line: OrderLine, piece: Piece, stage: Stage): Result<Eligible<Able>> {
  const machines: Able[] = [];
  const refused: { machineId: string; reason: string }[] = [];
  const step = stepAt(piece.part, stage);
  for (const machine of shop.machine) {
    if (machine.stage !== stage) continue;
    if (step && step.placeId !== null && step.placeId !== machine.id) {
      refused.push({ machineId: machine.id, reason: `Its part says ${step.placeId}.` });
      continue;
    }
    const findings = findingsFor(machine, line, piece.part, piece.material, piece.gauge, {
      ...shop.settings,
      ...blankBasisOf(shop),
    });
    const stops = findings.filter((f) => f.severity === 'stop').map((f) => f.message);
    const warnings = findings.filter((f) => f.severity === 'warning');
    const { machine: setUp, tools } = setUpOn(shop, machine, piece, line.lengthMm);
    const estimate = stops.length > 0 ? null : estimateOn(setUp, line, piece, shop.settings);
    if (estimate?.ok)
      machines.push({
        id: machine.id,
        seconds: estimate.value.seconds,
        estimate: estimate.value,
        warnings,
        tools,
        attributes: withTools(attributesOf(stage, line), tools),
      });
    else
      refused.push({
        machineId: machine.id,
        reason: [...stops, ...(estimate?.issues.map((p) => p.message) ?? [])].join(' '),
      });
  }
  if (machines.length > 0) return ok({ machines, refused });
  if (refused.length === 0)
    return err(
      issue(
        `line ${line.id}`,
        stage,
        `The shop has no ${shortStageName(stage)}.`,
        'Add one in Shop, Machines.',
      ),
    );
  const reasons = refused.map((r) => `${r.machineId}: ${r.reason}`).join(' ');
  const message = `Line ${line.id} fits no ${shortStageName(stage)}. ${reasons}`;
  return err(
    issue(
      `line ${line.id}`,
      'machine',
      message,
      'Change the line, or the limits of the machine if they are wrong.',
    ),
  );
}

function estimateOn(
  machine: Machine,
  line: OrderLine,
  { part, blank, sheet }: Piece,
  units: Units,
): Result<Estimate> {
  const { quantity } = line;
  const step = stepAt(part, machine.stage);
  switch (machine.stage) {
    case 'shear':
      return estimateShear({ blank, quantity, sheet, machine, units });
    case 'brake':
      return ok(estimateBrake({ part, blank, quantity, machine }));
    case 'outside':
      return ok(estimateAway(machine, step?.days ?? null));
    default:
      return ok(estimateBench({ machine, quantity, secondsPerPiece: step?.secondsPerPiece ?? null }));
  }
}
