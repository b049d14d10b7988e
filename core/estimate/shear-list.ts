import { countSteps } from '../cutting/counts.ts';
import type { SheetGroup } from '../cutting/plan.ts';
import type { CutStep, ShearCounts } from '../cutting/step.ts';
import type { Blank } from '../part/blank.ts';
import type { Machine } from '../shop/machine.ts';
import { estimateOf, peopleFor, reason, type Estimate, type Lift, type Reason } from './estimate.ts';
import { sheetLift } from './shear.ts';
import { standard, type Timed } from './standards.ts';

/** A step list with its sheets, as it is kept for a run. */
interface ListedSheets {
  readonly groups: readonly Pick<SheetGroup, 'id' | 'count' | 'widthMm' | 'lengthMm'>[];
  readonly steps: readonly CutStep[];
}

/** A line that the list cuts. */
interface ListedLine {
  readonly id: string;
  readonly quantity: number;
  readonly blank: Blank;
}

interface ListedTime {
  readonly estimate: Estimate;
  /**
   * Share of the line's own time after which the first lot can go on to the brake, above 0 and at most 1: when the
   * steps have cut that part of its blanks, seen from where its time begins in the run.
   */
  readonly lotShare: number;
}

type ShearLike = Timed & Pick<Machine, 'crew'>;

/** The first lot cannot come before anything is done. */
const LEAST_SHARE = 0.01;

/**
 * Machine time of each line of a step list: sheets loaded by weight and crew, gauge moves, strokes single and
 * continuous, stacking. What serves several lines (a sheet, a move, a crosscut) is shared by the area of the blanks
 * that its group of sheets gives them; stacking and bundling are each line's own. Common practice, no source.
 * @param lines in the order of the queue: the time of each begins where the one before it ends
 * @param lot share of a line's blanks that makes the first lot; 1: all of them
 * @returns by line id; lines that the list gives no blank are left out
 */
export function estimateList(
  list: ListedSheets,
  lines: readonly ListedLine[],
  machine: ShearLike,
  lot: number,
): Map<string, ListedTime> {
  const each = (key: string): number => standard(machine, key);
  const timed = list.steps.map((step, at) => ({ step, counts: added(list.steps, at) }));
  const lift = liftOf(lines);
  const who = peopleFor(machine, list.groups.map(lift));
  const sheetKg = (group: ListedSheets['groups'][number]): number => lift(group).weightKg;
  const work = (counts: ShearCounts, kg: number): Reason[] => [
    reason('load and square a sheet', counts.sheets, each('sheetLoad')),
    reason('weight of a sheet, by the person', counts.sheets, (kg / who.people) * each('sheetLoadPerKg')),
    reason('feed a panel or strip again', counts.feedsAgain, each('feedAgain')),
    reason('move the back gauge', counts.backGaugeMoves, each('backGaugeMove')),
    reason('feed and cut, single strokes', counts.singleStrokes, each('cut')),
    reason('feed and cut, continuous strokes', counts.continuousStrokes, each('cutContinuous')),
  ];
  const perGroup = list.groups.map((group) => {
    const own = timed.filter(({ step }) => step.group === group.id);
    return { id: group.id, work: work(sumOf(own.map(({ counts }) => counts)), sheetKg(group)) };
  });
  const areas = areasByGroup(list.steps);
  const clock = clockOf(timed, (counts, group) => {
    const found = list.groups.find(({ id }) => id === group);
    const shared = work(counts, found ? sheetKg(found) : 0).reduce((sum, { seconds }) => sum + seconds, 0);
    return (shared + counts.blanksStacked * each('stack')) * (1 + each('allowance'));
  });
  const times = new Map<string, ListedTime>();
  let started = 0;
  for (const line of lines) {
    if (!areas.has(line.id)) continue;
    const shares = perGroup.flatMap(({ id, work: all }) => {
      const share = (areas.get(line.id)?.get(id) ?? 0) / (areas.get('')?.get(id) ?? 1);
      return all.map((one) => ({ ...one, count: one.count * share }));
    });
    const own = estimateOf(machine, who, [
      ...byLabel(shares),
      reason('stack a blank', line.quantity, each('stack')),
      reason('bundle and label', each('bundleOnClock'), each('bundle')),
    ]);
    const firstLot = clock(line.id, Math.ceil(lot * line.quantity)) - started;
    const lotShare = own.seconds > 0 ? Math.min(1, Math.max(LEAST_SHARE, firstLot / own.seconds)) : 1;
    times.set(line.id, { estimate: own, lotShare });
    started += own.seconds - each('bundleOnClock') * each('bundle') * (1 + each('allowance'));
  }
  return times;
}

/** Sheets as they are lifted, of the lines' heaviest metal; a run is of one. */
function liftOf(lines: readonly ListedLine[]): (sheet: ListedSheets['groups'][number]) => Lift {
  const heaviest = lines.reduce<Blank | null>(
    (most, { blank }) =>
      most && most.weightKg / most.areaM2 >= blank.weightKg / blank.areaM2 ? most : blank,
    null,
  );
  return (sheet) => sheetLift(sheet, heaviest ?? { weightKg: 0, areaM2: 1, thicknessMm: 0 });
}

/** What one step adds to what the list asks of the shear so far. */
function added(steps: readonly CutStep[], at: number): ShearCounts {
  const [before, after] = [countSteps(steps.slice(0, at)), countSteps(steps.slice(0, at + 1))];
  return combined(after, before, (a, b) => a - b);
}

const NONE: ShearCounts = countSteps([]);
const sumOf = (all: readonly ShearCounts[]): ShearCounts =>
  all.reduce((sum, one) => combined(sum, one, (a, b) => a + b), NONE);
const combined = (a: ShearCounts, b: ShearCounts, how: (a: number, b: number) => number): ShearCounts =>
  Object.fromEntries(
    (Object.keys(NONE) as (keyof ShearCounts)[]).map((key) => [key, how(a[key], b[key])]),
  ) as unknown as ShearCounts;

/** Area of blanks by line and group; under the line "" that of all lines, also of those that are cut already. */
function areasByGroup(steps: readonly CutStep[]): Map<string, Map<string, number>> {
  const areas = new Map<string, Map<string, number>>();
  const add = (line: string, group: string, area: number): void => {
    const known = areas.get(line) ?? new Map<string, number>();
    areas.set(line, known.set(group, (known.get(group) ?? 0) + area));
  };
  for (const { lines: lots, group, to, rest } of steps) {
    const blank = to.kind === 'blank' ? to : rest?.kind === 'blank' ? rest : null;
    if (blank === null) continue;
    for (const { line, pieces } of lots)
      for (const whose of [line, '']) add(whose, group, pieces * blank.girthMm * blank.lengthMm);
  }
  return areas;
}

/** When a line has its first so many blanks, in seconds from the list's first step. */
function clockOf(
  timed: readonly { readonly step: CutStep; readonly counts: ShearCounts }[],
  secondsOf: (counts: ShearCounts, group: string) => number,
): (line: string, pieces: number) => number {
  return (line, pieces) => {
    let now = 0;
    let made = 0;
    for (const { step, counts } of timed) {
      now += secondsOf(counts, step.group);
      made += step.lines.find((one) => one.line === line)?.pieces ?? 0;
      if (made >= pieces) break;
    }
    return now;
  };
}

/** The same element of several groups added up. */
function byLabel(all: readonly Reason[]): Reason[] {
  const known = new Map<string, Reason>();
  for (const one of all)
    known.set(one.label, reason(one.label, (known.get(one.label)?.count ?? 0) + one.count, one.each));
  return [...known.values()];
}
