import type { Blank } from '../part/blank.ts';
import type { ScheduledOperation } from '../schedule/problem.ts';
import { FIRST_PIECE_AFTER, firstPieceSeconds, firstPieceValue } from '../estimate/first-piece.ts';
import { hasTools } from '../limits/tool-limits.ts';
import type { Extra } from '../planning/blanks.ts';
import { notPublished } from '../planning/followed-plan.ts';
import { fetchedBy, type Fetched } from '../planning/fetched.ts';
import { lineLotWords } from '../planning/line-lot.ts';
import { stepAt } from '../planning/routing.ts';
import { queueRuns, type PlannedOperation, type PlanRead } from '../planning/runs.ts';
import { attribute, inWorkOrder, type Attribute, type Attributes, type Machine } from '../shop/machine.ts';
import type { ShopOperation } from '../planning/operations.ts';
import { toolsName } from '../planning/set-up.ts';
import { gaugeName, metalWords } from '../shop/metal-name.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import type { Shop } from '../shop/state.ts';
import { metalWords as awaitedWords } from './metal-words.ts';
import { whyPeople } from './people-words.ts';
import { toolSetWords } from './tool-words.ts';
import { instant, type Instant } from '../units/brand.ts';

/** Where a line goes after this machine. */
interface NextStep {
  readonly machineName: string;
  readonly start: Instant;
}

/** One operation on a machine's list, as the person at the machine needs it. */
export interface DispatchRow {
  /** In the machine's queue, from 1. */
  readonly position: number;
  readonly operationId: string;
  readonly line: OrderLine;
  /** Pieces to make here: at the shear all blanks; later the line's, less those scrapped on the step before. */
  readonly quantity: number;
  /** How many of them are beyond the line's pieces. */
  readonly extra: Extra;
  readonly customer: string;
  readonly rush: boolean;
  /** Newer than the plan that was published; it stands behind until it is published again. */
  readonly unpublished: boolean;
  readonly part: Part;
  readonly colourName: string;
  /** The lot to fetch, in words; '' where the shop tells none apart. */
  readonly lot: string;
  readonly blank: Blank;
  readonly start: Instant;
  readonly end: Instant;
  readonly people: number;
  /** Why more than one; '' for one. */
  readonly whyPeople: string;
  /** What is set up for it on a brake with tools on record; null elsewhere. */
  readonly tools: string | null;
  readonly due: Instant;
  /** Seconds by which the whole line ends after its due date; 0 when it is on time. */
  readonly tardiness: number;
  /** On a shear what of its metal is not here; what is to be done in a further step, and what was noted on the order and on the line. */
  readonly notes: readonly string[];
  /** Null on the line's last machine. */
  readonly next: NextStep | null;
}

/** One thing to change on the machine; `from` null when what is set up is not known. Names as people say them. */
export interface SetupStep {
  readonly attribute: Attribute;
  readonly from: string | null;
  readonly to: string;
}

/** A stretch of the queue without a changeover inside it, and the changeover before it. */
export interface DispatchRun {
  /** What all its rows share, e.g. "24 ga Moss, galvanized". */
  readonly title: string;
  /** Seconds, and what changes; null when the machine needs none. */
  readonly changeover: {
    readonly start: Instant;
    readonly seconds: number;
    /** Whether a first piece is formed, measured and adjusted in that time. */
    readonly firstPiece: boolean;
    readonly steps: readonly SetupStep[];
  } | null;
  /** The tools set up for its rows, each set once. */
  readonly tools: readonly string[];
  readonly rows: readonly DispatchRow[];
}

export interface DispatchList {
  readonly machine: Machine;
  readonly runs: readonly DispatchRun[];
}

/**
 * The queues of the machines on paper: what lies, even in part, in [from, to), in queue order, grouped by run. Times and
 * positions are the schedule's own, so the paper says what the board says.
 * @returns one list a machine of the shop, shears first, empty ones too
 */
export function dispatchLists(shop: Shop, plan: PlanRead, from: Instant, to: Instant): DispatchList[] {
  const index = indexOf(shop, plan);
  return inWorkOrder(shop.machine).map((machine) => ({
    machine,
    runs: runsOf(index, machine, queueRuns(plan, machine), (o) => o.changeoverStart < to && o.end > from),
  }));
}

type Index = ReturnType<typeof indexOf>;

function indexOf(shop: Shop, plan: PlanRead) {
  const { schedule } = plan;
  const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
    new Map(rows.map((row) => [row.id, row]));
  return {
    shop,
    units: shop.settings,
    parts: byId(shop.part),
    materials: byId(shop.material),
    colours: byId(shop.colour),
    machines: byId(shop.machine),
    tools: byId(shop.tool),
    steps: new Map(schedule.operations.map((o) => [`${o.job} ${o.index}`, o])),
    ends: schedule.ends,
    unpublished: notPublished(shop),
    fetched: fetchedBy(plan),
  };
}

/** Walks the whole queue, so that states and positions are right, and keeps what is wanted. */
function runsOf(
  index: Index,
  machine: Machine,
  queue: readonly (readonly PlannedOperation[])[],
  wanted: (o: ScheduledOperation) => boolean,
): DispatchRun[] {
  let state: Attributes = machine.state ?? {};
  let position = 0;
  return queue.flatMap((run): DispatchRun[] => {
    const rows: DispatchRow[] = [];
    let changeover: DispatchRun['changeover'] = null;
    let shared: Attributes | null = null;
    for (const { planned, operation } of run) {
      const asked = askedOn(operation, machine);
      const fetched = index.fetched.get(planned.operation);
      const again = fetched ? fetchSteps(index, machine, fetched, state, asked) : [];
      const steps = [...setupSteps(index, machine, state, asked), ...again];
      const firstPiece = needsFirstPiece(index, machine, { state, asked, fetched: again });
      state = { ...state, ...asked };
      position += 1;
      if (!wanted(planned)) continue;
      const { changeoverStart, changeoverSeconds: seconds } = planned;
      if (seconds > 0) changeover = { start: instant(changeoverStart), seconds, steps, firstPiece };
      shared = shared ? common(shared, asked) : asked;
      rows.push(rowOf(index, operation, planned, position));
    }
    return shared ? [{ title: titleOf(index, shared), changeover, tools: toolsOf(rows), rows }] : [];
  });
}

const toolsOf = (rows: readonly DispatchRow[]): string[] => [
  ...new Set(rows.flatMap(({ tools }) => tools ?? [])),
];

/** What an operation asks for on a machine. */
const askedOn = ({ machines, attributes }: ShopOperation, { id }: Machine): Attributes =>
  machines.find((able) => able.id === id)?.attributes ?? attributes;

/** The attributes on which two operations agree. */
function common(a: Attributes, b: Attributes): Attributes {
  return Object.fromEntries(Object.entries(a).filter(([key, value]) => b[key as Attribute] === value));
}

/** Whether the time of a changeover has a first piece in it: as the engine sees it, what is not known costs none. */
function needsFirstPiece(
  index: Index,
  machine: Machine,
  { state, asked, fetched }: Record<'state' | 'asked', Attributes> & { fetched: readonly SetupStep[] },
): boolean {
  if (firstPieceSeconds(machine) === 0) return false;
  const stood = firstPieceValue(state, hasTools(machine, [...index.tools.values()]));
  const next = firstPieceValue(asked, asked.tools !== undefined);
  const changes = stood !== null && next !== null && stood !== next;
  return changes || fetched.some(({ attribute: name }) => FIRST_PIECE_AFTER.includes(name));
}

/** What differs from the machine's state, of those things that cost time on this machine. */
function setupSteps(index: Index, machine: Machine, state: Attributes, asked: Attributes): SetupStep[] {
  const rules = machine.changeover;
  return attribute.options.flatMap((name): SetupStep[] => {
    const to = asked[name];
    const from = state[name];
    const costs =
      rules.attributes[name] !== undefined ||
      rules.exceptions.some((e) => e.attribute === name) ||
      (firstPieceSeconds(machine) > 0 && FIRST_PIECE_AFTER.includes(name));
    if (to === undefined || to === from || !costs) return [];
    return [
      {
        attribute: name,
        from: from === undefined ? null : nameOf(index, name, from),
        to: nameOf(index, name, to),
      },
    ];
  });
}

/** Tools that stand as asked but for what another brake had meanwhile. */
const fetchSteps = (
  index: Index,
  machine: Machine,
  fetched: Fetched,
  state: Attributes,
  asked: Attributes,
): SetupStep[] =>
  [...fetched].flatMap(([attribute, from]): SetupStep[] => {
    const to = asked[attribute];
    const brake = index.machines.get(from)?.name ?? from;
    if (to === undefined || state[attribute] !== to || !machine.changeover.attributes[attribute]) return [];
    return [{ attribute, from: `on ${brake}`, to: nameOf(index, attribute, to) }];
  });

/** An attribute's value as people say it; the value itself where its row has gone. */
function nameOf(index: Index, name: Attribute, value: string): string {
  switch (name) {
    case 'material':
      return index.materials.get(value)?.name ?? value;
    case 'gauge':
      return gaugeName(value);
    case 'colour':
      return index.colours.get(value)?.name ?? value;
    case 'profile':
      return index.parts.get(value)?.name ?? value;
    case 'tools':
    case 'hemming':
      return toolsName(index.tools, value);
  }
}

function titleOf(index: Index, { gauge, colour, material, profile }: Attributes): string {
  const metal = metalWords({
    gauge,
    colour: colour && nameOf(index, 'colour', colour),
    material: material && nameOf(index, 'material', material),
  });
  return [metal, profile && nameOf(index, 'profile', profile)].filter(Boolean).join(', ');
}

function rowOf(
  index: Index,
  { line, stage, quantity, extra, order, terms, part, blank, lot, metal, people, machines }: ShopOperation,
  o: ScheduledOperation,
  position: number,
): DispatchRow {
  const colour = index.colours.get(line.colourId);
  const tools = machines.find(({ id }) => id === o.machine)?.tools;
  const machine = index.machines.get(o.machine);
  const awaited = metal && stage === 'shear' ? awaitedWords(index.shop, metal, null) : [];
  return {
    position,
    operationId: o.operation,
    line,
    quantity,
    extra,
    customer: order.customer,
    rush: order.rush,
    unpublished: index.unpublished.has(o.operation),
    part,
    colourName: colour?.name ?? line.colourId,
    lot: lineLotWords(lot),
    blank,
    start: instant(o.start),
    end: instant(o.end),
    people,
    whyPeople: machine ? whyPeople(machine, { machines, people }, index.units) : '',
    tools: tools ? toolSetWords(tools, index.units) : null,
    due: instant(terms.due),
    tardiness: Math.max(0, (index.ends[line.id] ?? o.end) - terms.due),
    notes: [...awaited, stepAt(part, stage)?.note ?? '', ...terms.notes].filter((words) => words !== ''),
    next: nextStep(index, o),
  };
}

function nextStep(index: Index, o: ScheduledOperation): NextStep | null {
  const next = index.steps.get(`${o.job} ${o.index + 1}`);
  const machine = next && index.machines.get(next.machine);
  return next && machine ? { machineName: machine.name, start: instant(next.start) } : null;
}
