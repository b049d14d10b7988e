import type { Block } from '../../core/edit/blocks.ts';
import type { Bar, Lane } from './lanes.ts';

/**
 * Where chosen operations go by one gesture: blocks for core/edit/blocks.ts. What has started stays where it is, and
 * nothing goes before it.
 */

export type By = -1 | 1;

/** The bars of a lane that move and those that stay, both in queue order, and how many stay at the front. */
interface Parted {
  readonly moved: readonly Bar[];
  readonly rest: readonly Bar[];
  readonly started: number;
}

function parted(lane: Lane, operations: ReadonlySet<string>): Parted {
  const moves = (bar: Bar) => !bar.started && operations.has(bar.operation);
  const rest = lane.bars.filter((bar) => !moves(bar));
  return { moved: lane.bars.filter(moves), rest, started: rest.filter((bar) => bar.started).length };
}

const namesOf = (bars: readonly Bar[]): string[] => bars.map((bar) => bar.operation);

/** What would move of the chosen operations, in the order of their starts. */
export const movable = (lanes: readonly Lane[], operations: readonly string[]): readonly Bar[] => {
  const chosen = new Set(operations);
  return lanes.flatMap((lane) => parted(lane, chosen).moved).sort((a, b) => a.start - b.start);
};

/** Those of the chosen that are a step like this one's, so that one lane can take them all. */
export function sameStep(lanes: readonly Lane[], operations: readonly string[], one: string): readonly Bar[] {
  const stageOf = new Map(
    lanes.flatMap(({ machine, bars }) => bars.map((b) => [b.operation, machine.stage])),
  );
  return movable(lanes, operations).filter((bar) => stageOf.get(bar.operation) === stageOf.get(one));
}

/**
 * The place in a lane for operations let go at an instant: before the first other operation whose middle is later, but
 * behind everything that has started.
 */
export function dropAt(lane: Lane, operations: readonly string[], at: number): Block {
  const { rest, started } = parted(lane, new Set(operations));
  const before = rest.filter((bar) => (bar.start + bar.end) / 2 < at).length;
  return { operations, machineId: lane.machine.id, position: Math.max(started, before) };
}

/** Neighbours in the queue go on together: each stretch of moved bars with the count of those that stay before it. */
function stretchesOf(lane: Lane, { moved }: Parted): { bars: Bar[]; position: number }[] {
  const moves = new Set(moved);
  const all: { bars: Bar[]; position: number }[] = [];
  let stays = 0;
  let last: Bar[] | null = null;
  for (const bar of lane.bars) {
    if (!moves.has(bar)) {
      stays += 1;
      last = null;
    } else if (last) last.push(bar);
    else all.push({ bars: (last = [bar]), position: stays });
  }
  return all;
}

type Place = (position: number, parts: Parted, lane: Lane) => number;

/** Each stretch of the chosen, in its own lane, to another place. */
function placed(lanes: readonly Lane[], operations: readonly string[], place: Place): Block[] {
  const chosen = new Set(operations);
  return lanes.flatMap((lane) => {
    const parts = parted(lane, chosen);
    const within = (position: number) => Math.min(parts.rest.length, Math.max(parts.started, position));
    return stretchesOf(lane, parts).map(({ bars, position }) => ({
      operations: namesOf(bars),
      machineId: lane.machine.id,
      position: within(place(position, parts, lane)),
    }));
  });
}

/** One place earlier or later in their queues. */
export const shifted = (lanes: readonly Lane[], operations: readonly string[], by: By): Block[] =>
  placed(lanes, operations, (position) => position + by);

/** First or last in their queues. */
export const toEnd = (
  lanes: readonly Lane[],
  operations: readonly string[],
  end: 'first' | 'last',
): Block[] => placed(lanes, operations, (_, { rest }) => (end === 'first' ? 0 : rest.length));

/** Past the run that stands before or behind them. */
export const pastRun = (lanes: readonly Lane[], operations: readonly string[], by: By): Block[] =>
  placed(lanes, operations, (position, { rest }, lane) => {
    const next = rest[by === 1 ? position : position - 1];
    const run = next && runWith(lane, next.operation);
    if (!run) return position;
    const inRun = new Set(run);
    let to = position;
    while (inRun.has(rest[by === 1 ? to : to - 1]?.operation ?? '')) to += by;
    return to;
  });

/**
 * Behind all that starts the same day in their queues; behind the next day's, where they are the last of their day
 * already.
 * @param dayEnd the end of the shop's day in which an instant lies
 */
export const postponed = (
  lanes: readonly Lane[],
  operations: readonly string[],
  dayEnd: (at: number) => number,
): Block[] =>
  placed(lanes, operations, (position, { rest }, lane) => {
    const last = lane.bars.findLast((bar) => operations.includes(bar.operation));
    const behind = (at: number) => rest.filter((bar) => bar.start < dayEnd(at)).length;
    const today = behind(last?.start ?? 0);
    const next = rest[position];
    return today > position || !next ? today : behind(next.start);
  });

/** The operations of the run in which one stands, in queue order. */
export function runWith(lane: Lane, operation: string): readonly string[] | null {
  const position = lane.bars.findIndex((bar) => bar.operation === operation);
  const run = lane.runs.find(({ first, count }) => first <= position && position < first + count);
  return position === -1 || !run ? null : namesOf(lane.bars.slice(run.first, run.first + run.count));
}

/** The run of an operation from there on: what goes behind the next run when it is split there. */
export function laterPart(lanes: readonly Lane[], operation: string): readonly string[] {
  for (const lane of lanes) {
    const run = runWith(lane, operation);
    if (run) return run.slice(run.indexOf(operation));
  }
  return [operation];
}
