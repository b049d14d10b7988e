import { gaugeFor, planAxis, type AxisCut } from './axis.ts';
import { letters, type Group } from './groups.ts';
import { byDue, hundredth, type BlankSize, type RunInput, type RunLine } from './run.ts';
import type { Panel, Strip } from './layout.ts';
import { isLargeEnough } from './remnants.ts';
import type { CutStep, Destination } from './step.ts';

/** 0 rip of whole sheets, 1 their crosscut, 2 rip of panels, 3 crosscut of strips. */
type Stage = 0 | 1 | 2 | 3;

/** A step before it is ordered, numbered and shared out to lines. */
interface Task {
  readonly group: Group;
  readonly stage: Stage;
  readonly stack: string;
  readonly fed: number;
  readonly cut: AxisCut | null;
  readonly cutsEach: number;
  readonly to: Destination;
  /** What remains of each piece after all of the stack's cuts. */
  readonly rest: Destination;
}

/** One length to divide: a stack of equal pieces and the parts that each is to give. */
interface Division {
  readonly group: Group;
  readonly stage: Stage;
  readonly stack: string;
  readonly fed: number;
  readonly totalMm: number;
  readonly trimMm: number;
  /** The side that the cut does not change. */
  readonly otherMm: number;
  readonly parts: readonly { readonly sizeMm: number; readonly to: Destination }[];
}

/**
 * The list of settings in the order to cut: groups that serve the most urgent lines first; among groups of equal
 * urgency what is trimmed off whole sheets, then all crosscuts, then all rips, then the strips' crosscuts, each from the largest setting to the smallest, so that
 * equal settings follow one another and the back gauge moves least. Common practice, no source.
 */
export function stepsOf(run: RunInput, sizes: readonly BlankSize[], groups: readonly Group[]): CutStep[] {
  const tasks = groups.flatMap((group) => tasksOf(run, sizes, group));
  const sizeOf = (task: Task): number => task.cut?.sizeMm ?? 0;
  // A trimmed edge is what the cuts after it are squared to, so it comes before all of them.
  const first = ({ cut }: Task): number => (cut?.gives === 'trim' ? 0 : cut?.gauge === 'line' ? 1 : 2);
  tasks.sort(
    (a, b) =>
      byDue(a.group.due, b.group.due) || a.stage - b.stage || first(a) - first(b) || sizeOf(b) - sizeOf(a),
  );
  const lastOf = new Map(tasks.map((task) => [task.stack, task]));
  const share = sharing(sizes);
  let blanksSoFar = 0;
  return tasks.map((task, at): CutStep => {
    const { stack, fed, cut, cutsEach, to } = task;
    const rest = lastOf.get(stack) === task ? task.rest : null;
    const blanks = (to.kind === 'blank' ? fed * cutsEach : 0) + (rest?.kind === 'blank' ? fed : 0);
    blanksSoFar += blanks;
    const { continuousFrom } = run.shear;
    return {
      number: at + 1,
      group: task.group.id,
      stack,
      fed,
      axis: task.stage % 2 === 0 ? 'width' : 'length',
      sizeMm: sizeOf(task),
      backGaugeMm: cut?.gauge === 'back' ? cut.sizeMm : null,
      cutsEach,
      stroke: continuousFrom !== null && cutsEach >= continuousFrom ? 'continuous' : 'single',
      to,
      rest,
      lines: [...share(to, fed * cutsEach), ...(rest ? share(rest, fed) : [])].reduce(joined, []),
      blanks,
      blanksSoFar,
    };
  });
}

function tasksOf(run: RunInput, sizes: readonly BlankSize[], group: Group): Task[] {
  const { id, stock, count, lengthMm, layout } = group;
  const kinds = alike(layout.panels);
  // A sheet that needs no crosscut is itself the panel.
  const whole =
    kinds.length === 1 &&
    kinds[0]?.count === 1 &&
    stock.endTrimMm === 0 &&
    kinds[0].one.lengthMm === lengthMm;
  const named = kinds.map((kind, k) => ({ ...kind, stack: whole ? id : `${id}${k + 1}` }));
  const parts = named.flatMap(({ one, count: times, stack }) =>
    new Array<Division['parts'][number]>(times).fill({ sizeMm: one.lengthMm, to: { kind: 'stack', stack } }),
  );
  const sheets: Division = {
    group,
    stage: 1,
    stack: id,
    fed: count,
    totalMm: lengthMm,
    trimMm: stock.endTrimMm,
    otherMm: across(group).totalMm,
    parts,
  };
  return [
    ...trimTask(run, group),
    ...(whole ? [] : divide(run, sheets)),
    ...named.flatMap(({ one, count: times, stack }) =>
      ripTasks(run, sizes, group, one, stack, count * times),
    ),
  ];
}

/** What there is to divide across a panel: less what was trimmed off the whole sheet, else with its own trim. */
export const across = ({ widthMm, stock, trimFirstMm }: Group): { totalMm: number; trimMm: number } =>
  trimFirstMm > 0
    ? { totalMm: hundredth(widthMm - trimFirstMm), trimMm: 0 }
    : { totalMm: widthMm, trimMm: stock.sideTrimMm };

/** One side of whole sheets ripped off before they are crosscut. An edge that is not trusted is cut to a line. */
function trimTask(run: RunInput, group: Group): Task[] {
  const { id, count, stock, trimFirstMm } = group;
  if (trimFirstMm === 0) return [];
  const gauge = stock.sideTrimMm > 0 ? 'line' : gaugeFor(trimFirstMm, run.shear);
  const to = { kind: 'scrap' } as const;
  const cut = { gives: 'trim', sizeMm: trimFirstMm, gauge } as const;
  return [{ group, stage: 0, stack: id, fed: count, cut, cutsEach: 1, to, rest: to }];
}

function ripTasks(
  run: RunInput,
  sizes: readonly BlankSize[],
  group: Group,
  panel: Panel,
  stack: string,
  fed: number,
): Task[] {
  const kinds = alike(panel.strips).map((kind, k) => ({
    ...kind,
    stack: `${stack}${letters(k).toLowerCase()}`,
  }));
  const blankOf = (item: number): Destination => {
    const { girthMm, lengthMm } = sizes[item] as BlankSize;
    return { kind: 'blank', girthMm, lengthMm };
  };
  const isBlank = (strip: Strip): boolean =>
    strip.blanks.length === 1 && sizes[strip.blanks[0] as number]?.lengthMm === panel.lengthMm;
  const parts = kinds.flatMap(({ one, count, stack: to }) =>
    new Array<Division['parts'][number]>(count).fill({
      sizeMm: one.girthMm,
      to: isBlank(one) ? blankOf(one.blanks[0] as number) : { kind: 'stack', stack: to },
    }),
  );
  const rips: Division = { group, stage: 2, stack, fed, otherMm: panel.lengthMm, parts, ...across(group) };
  const strips = kinds.filter(({ one }) => !isBlank(one));
  return [
    ...divide(run, rips),
    ...strips.flatMap(({ one, count, stack: strip }) =>
      divide(run, {
        group,
        stage: 3,
        stack: strip,
        fed: fed * count,
        totalMm: panel.lengthMm,
        trimMm: 0,
        otherMm: one.girthMm,
        parts: one.blanks.map((item) => ({ sizeMm: (sizes[item] as BlankSize).lengthMm, to: blankOf(item) })),
      }),
    ),
  ];
}

/** The cuts of one stack as tasks, equal cuts to one destination together. */
function divide(run: RunInput, division: Division): Task[] {
  const { group, stage, stack, fed, parts } = division;
  const plan = planAxis(
    division.totalMm,
    division.trimMm,
    parts.map((part) => part.sizeMm),
    run.shear,
  );
  const open = parts.slice();
  const offcut = (sizeMm: number): Destination => {
    const [widthMm, lengthMm] = stage % 2 === 0 ? [sizeMm, division.otherMm] : [division.otherMm, sizeMm];
    return { kind: isLargeEnough(run.keep, widthMm, lengthMm) ? 'remnant' : 'scrap' };
  };
  const part = (sizeMm: number): Destination =>
    (
      open.splice(
        open.findIndex((one) => one.sizeMm === sizeMm),
        1,
      )[0] as (typeof parts)[number]
    ).to;
  const cuts = plan.cuts.map((cut) => ({
    cut,
    to:
      cut.gives === 'piece'
        ? part(cut.sizeMm)
        : cut.gives === 'trim'
          ? ({ kind: 'scrap' } as const)
          : offcut(cut.sizeMm),
  }));
  const rest = plan.remains === 'piece' ? part(plan.remainsMm) : offcut(plan.remainsMm);
  const base = { group, stage, stack, fed, rest };
  if (cuts.length === 0) return [{ ...base, cut: null, cutsEach: 0, to: rest }];
  return alike(cuts).map(({ one, count }) => ({ ...base, cut: one.cut, cutsEach: count, to: one.to }));
}

/** Equal things counted, in the order first met. */
function alike<T>(things: readonly T[]): { one: T; count: number }[] {
  const counted = new Map<string, { one: T; count: number }>();
  for (const one of things) {
    const key = JSON.stringify(one);
    counted.set(key, { one, count: (counted.get(key)?.count ?? 0) + 1 });
  }
  return [...counted.values()];
}

type Lot = CutStep['lines'][number];

/** Shares finished blanks out to the lines of their size: each gets what it asked, the most urgent first, then overruns. */
function sharing(sizes: readonly BlankSize[]): (to: Destination, pieces: number) => Lot[] {
  const queues = new Map(sizes.map((size) => [`${size.girthMm}×${size.lengthMm}`, wantsOf(size.lines)]));
  return (to, pieces) => {
    if (to.kind !== 'blank') return [];
    const lots: Lot[] = [];
    let left = pieces;
    for (const want of queues.get(`${to.girthMm}×${to.lengthMm}`) ?? []) {
      const given = Math.min(left, want.pieces);
      if (given > 0) lots.push({ line: want.line, pieces: given });
      want.pieces -= given;
      left -= given;
    }
    return lots;
  };
}

const wantsOf = (lines: readonly RunLine[]): { line: string; pieces: number }[] => [
  ...lines.map((line) => ({ line: line.id, pieces: line.quantity })),
  ...lines.map((line) => ({ line: line.id, pieces: line.overrun })),
];

function joined(lots: Lot[], lot: Lot): Lot[] {
  const known = lots.find((one) => one.line === lot.line);
  if (!known) return [...lots, lot];
  return lots.map((one) => (one === known ? { line: one.line, pieces: one.pieces + lot.pieces } : one));
}
