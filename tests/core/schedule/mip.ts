import type highsLoader from 'highs';
import { changeoverSeconds } from '../../../core/schedule/check-hours.ts';
import type { JobInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';
import { positionsProgramme } from './mip-positions.ts';
import { Programme } from './mip-programme.ts';

/**
 * A shop as a mixed-integer programme, to hold the search against a solver that proves its optimum. For machines always
 * open from 0, whole lines passed on, nobody short and nothing fixed.
 *
 * Sources (from memory): where a machine has no changeovers and no alternative, either-or constraints of A. S. Manne,
 * Operations Research 8, 1960, pp. 219-223; elsewhere one variable for each pair of neighbours in a queue, its ends
 * chained as in C. E. Miller, A. W. Tucker and R. A. Zemlin, Journal of the ACM 7, 1960, pp. 326-329, as A. Guinet,
 * International Journal of Production Research 31, 1993, pp. 1579-1594, does for machines side by side.
 */

export type Highs = Awaited<ReturnType<typeof highsLoader>>;

export interface MipAnswer {
  /** Of the best plan the solver found; Infinity when it found none. */
  readonly objective: number;
  /** `optimal`: no plan is better; `none`: no plan at all within `atMost`; `stopped`: out of time. */
  readonly status: 'optimal' | 'none' | 'stopped';
}

interface Step extends OperationInput {
  readonly number: number;
  readonly job: JobInput;
  readonly before: number | null;
}

/**
 * Solves the shop to its optimum.
 * @param atMost an objective some plan is known to have: plans that cost more are cut off, which leaves the optimum in
 */
export function solveShop(highs: Highs, input: ProblemInput, atMost: number, seconds: number): MipAnswer {
  const oneMachine = input.machines.length === 1 && input.jobs.every((job) => job.weight === 1);
  const text = (oneMachine ? positionsProgramme(input) : programme(input)).text(atMost);
  const solved = highs.solve(text, {
    time_limit: seconds,
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-6,
  });
  if (solved.Status === 'Infeasible') return { objective: Infinity, status: 'none' };
  const objective = Number.isFinite(solved.ObjectiveValue) ? solved.ObjectiveValue : Infinity;
  return { objective, status: solved.Status === 'Optimal' ? 'optimal' : 'stopped' };
}

function programme(input: ProblemInput): Programme {
  const lp = new Programme();
  const steps = stepsOf(input);
  const horizon = latestEnd(input, steps);
  const { objective } = input;
  const assigned = new Map<number, string[]>(steps.map((step) => [step.number, []]));
  input.machines.forEach((machine, m) => {
    const here = steps.filter((step) => secondsOn(input, step, m) !== null);
    const plain = machine.changeover === null && here.every((step) => machinesFor(input, step).length === 1);
    if (plain) eitherOr(lp, input, m, here, horizon);
    if (plain && objective.makespan > 0) lp.row(`span >= ${loadOf(here)}`);
    else neighbours(lp, input, m, here, horizon, assigned);
  });
  for (const step of steps) chainSteps(lp, input, step, assigned.get(step.number)!);
  if (objective.makespan > 0) lp.cost(objective.makespan, 'span');
  for (const job of input.jobs) {
    const last = steps.findLast((step) => step.job === job)!.number;
    lp.cost(objective.flowTime, `c${last}`);
    if (objective.makespan > 0) lp.row(`span - c${last} >= 0`);
    if (job.due === null || objective.weightedTardiness === 0) continue;
    lp.cost(objective.weightedTardiness * job.weight, `t${last}`);
    lp.row(`t${last} - c${last} >= ${-job.due}`);
  }
  return lp;
}

/** One of two comes first: c is the end of an operation, y is 1 when the first of the pair precedes. */
function eitherOr(
  lp: Programme,
  input: ProblemInput,
  m: number,
  here: readonly Step[],
  horizon: number,
): void {
  for (const a of here)
    for (const b of here.filter((step) => step.number > a.number)) {
      const y = lp.choice(`y_${a.number}_${b.number}`);
      lp.row(`c${b.number} - c${a.number} - ${horizon} ${y} >= ${secondsOn(input, b, m)! - horizon}`);
      lp.row(`c${a.number} - c${b.number} + ${horizon} ${y} >= ${secondsOn(input, a, m)!}`);
    }
}

/** A machine cannot be done sooner than its load, with the least that comes before it and after it. */
function loadOf(here: readonly Step[]): number {
  const sum = (steps: readonly OperationInput[]) => steps.reduce((total, step) => total + step.seconds, 0);
  const at = (step: Step) => step.job.operations.findIndex(({ id }) => id === step.id);
  const heads = here.map((step) => step.job.release + sum(step.job.operations.slice(0, at(step))));
  const tails = here.map((step) => sum(step.job.operations.slice(at(step) + 1)));
  return Math.min(...heads) + sum(here) + Math.min(...tails);
}

/** x is 1 when b comes right after a on this machine; `s` stands for the queue's start. */
function neighbours(
  lp: Programme,
  input: ProblemInput,
  m: number,
  here: readonly Step[],
  horizon: number,
  assigned: Map<number, string[]>,
): void {
  const { initial, changeover } = input.machines[m]!;
  const firsts: string[] = [];
  const after = new Map<number, string[]>(here.map((step) => [step.number, []]));
  for (const b of here) {
    const work = secondsOn(input, b, m)!;
    const before: string[] = [];
    for (const a of [null, ...here]) {
      if (a === b) continue;
      const x = lp.choice(`x_${m}_${a?.number ?? 's'}_${b.number}`);
      const from = a === null ? (initial ?? {}) : (a.attributes ?? {});
      const seconds = changeoverSeconds(changeover, from, b.attributes ?? {});
      before.push(x);
      (a === null ? firsts : after.get(a.number)!).push(x);
      lp.cost(input.objective.changeover * seconds, x);
      if (a === null) lp.row(`c${b.number} - ${seconds + work} ${x} >= 0`);
      else lp.row(`c${b.number} - c${a.number} - ${horizon} ${x} >= ${seconds + work - horizon}`);
    }
    assigned.get(b.number)!.push(...before.map((x) => `${work} ${x}`));
    lp.row(`${before.join(' + ')} - into_${m}_${b.number} = 0`);
  }
  for (const a of here) lp.row(`into_${m}_${a.number} - ${[...after.get(a.number)!].join(' - ')} >= 0`);
  lp.row(`${firsts.join(' + ')} <= 1`);
}

/** Release, the step before, and being done exactly once somewhere. */
function chainSteps(lp: Programme, input: ProblemInput, step: Step, assigned: readonly string[]): void {
  const ready = step.before === null ? '' : ` - c${step.before}`;
  const release = step.before === null ? step.job.release : 0;
  if (assigned.length === 0) {
    const work = secondsOn(input, step, machinesFor(input, step)[0]!)!;
    lp.row(`c${step.number}${ready} >= ${release + work}`);
    return;
  }
  lp.row(`c${step.number}${ready} - ${assigned.join(' - ')} >= ${release}`);
  lp.row(`${assigned.map((term) => term.split(' ')[1]!).join(' + ')} = 1`);
}

function stepsOf(input: ProblemInput): Step[] {
  const steps: Step[] = [];
  for (const job of input.jobs)
    job.operations.forEach((operation, k) => {
      const number = steps.length;
      steps.push({ ...operation, number, job, before: k === 0 ? null : number - 1 });
    });
  return steps;
}

function secondsOn(input: ProblemInput, step: OperationInput, m: number): number | null {
  const machine = input.machines[m]!;
  if (step.machines === undefined) return step.stage === machine.stage ? step.seconds : null;
  const named = step.machines.find(({ id }) => id === machine.id);
  return named === undefined ? null : (named.seconds ?? step.seconds);
}

const machinesFor = (input: ProblemInput, step: OperationInput) =>
  [...input.machines.keys()].filter((m) => secondsOn(input, step, m) !== null);

/** No sensible plan lasts longer: everything one after the other, each with its longest changeover. */
function latestEnd(input: ProblemInput, steps: readonly Step[]): number {
  const longest = Math.max(
    0,
    ...input.machines.map(({ changeover }) =>
      Object.values(changeover?.attributes ?? {}).reduce((a, b) => a + b, 0),
    ),
  );
  const work = steps.map((step) =>
    Math.max(...machinesFor(input, step).map((m) => secondsOn(input, step, m)!)),
  );
  return Math.max(...input.jobs.map((job) => job.release)) + work.reduce((a, b) => a + b + longest, 0);
}
