import { openSecondsBetween } from '../schedule/working-time.ts';
import type { Spread } from './spread.ts';
import { ok, type Result } from '../result.ts';
import { buildProblem } from '../schedule/build.ts';
import { chances, promiseAt, type ChanceOptions } from './chance.ts';
import { decode } from '../schedule/decode.ts';
import type { Problem, Queues } from '../schedule/problem.ts';
import { finish, type WorkingTime } from '../schedule/working-time.ts';

/** So much open time into the plan, work planned to be done is done by `kept`, with the wished confidence; seconds. */
interface Point {
  readonly planned: number;
  readonly kept: number;
}

/**
 * The problem as it must be planned so that lines end by their due dates with a wished confidence: each due date is
 * pulled in by what a plan of that length usually needs beyond its planned time.
 *
 * The need is read off the plan at hand, played through: a line planned to end after E open seconds of its last machine
 * ends by Q of them in, say, nine of ten runs. Q(E) is drawn through the lines of each machine, never falling; a due date
 * H open seconds ahead becomes the E with Q(E) = H. It hangs on how much work is planned before a date, hardly on which,
 * so it holds for other orders of the same work (our own approximation, tested against playing the new plan through).
 * @param confidence above 0, below 1 (0.9: nine of ten)
 * @returns the same problem with earlier due dates, never later ones; or `chances`' and `promiseAt`'s problems
 */
export function protect(
  problem: Problem,
  queues: Queues,
  spread: Spread,
  confidence: number,
  options: ChanceOptions,
): Result<Problem> {
  const present = decode(problem, queues);
  if (!present.ok) return present;
  const played = chances(problem, queues, spread, options);
  if (!played.ok) return played;
  const lastMachine = new Map(present.value.operations.map((o) => [o.operation, o.machine]));
  const points = new Map<number, Point[]>();
  const machineOf = (operations: readonly { readonly id: string }[]): number =>
    problem.machineAt.get(lastMachine.get(operations.at(-1)!.id)!)![0]!;
  const { now } = problem.input;
  for (const { id, operations } of problem.input.jobs) {
    const m = machineOf(operations);
    const open = problem.open[m]!;
    const kept = promiseAt(played.value, id, confidence);
    if (!kept.ok) return kept;
    const point = {
      planned: openSecondsBetween(open, now, present.value.ends[id]!),
      kept: openSecondsBetween(open, now, kept.value),
    };
    points.set(m, [...(points.get(m) ?? []), point]);
  }
  const lines = new Map([...points].map(([m, own]) => [m, rising(own)]));
  const jobs = problem.input.jobs.map((job) => {
    const m = machineOf(job.operations);
    return job.due === null ? job : { ...job, due: pulledIn(job.due, now, problem.open[m]!, lines.get(m)!) };
  });
  return ok(buildOrThrow(problem, jobs));
}

function buildOrThrow(problem: Problem, jobs: Problem['input']['jobs']): Problem {
  const built = buildProblem({ ...problem.input, jobs });
  if (!built.ok) throw new Error('protect: earlier due dates made a problem invalid');
  return built.value;
}

/** By planned time; what is kept never falls and is never before what is planned. Begins at nothing planned, nothing needed. */
function rising(points: readonly Point[]): Point[] {
  let kept = 0;
  const line = points
    .toSorted((a, b) => a.planned - b.planned || a.kept - b.kept)
    .map((p) => ({ planned: p.planned, kept: (kept = Math.max(kept, p.kept, p.planned)) }));
  return [{ planned: 0, kept: 0 }, ...line];
}

function pulledIn(due: number, now: number, open: WorkingTime, line: readonly Point[]): number {
  if (due <= now) return due;
  const ahead = openSecondsBetween(open, now, due);
  return Math.min(due, Math.floor(finish(open, now, plannedFor(line, ahead))));
}

/** The longest planned time that is kept within `ahead`, along the line; past its end, in its last proportion. */
function plannedFor(line: readonly Point[], ahead: number): number {
  const next = line.findIndex((p) => p.kept > ahead);
  if (next === -1) {
    const last = line.at(-1)!;
    return last.kept === 0 ? ahead : (ahead * last.planned) / last.kept;
  }
  const [a, b] = [line[next - 1]!, line[next]!];
  return a.planned + ((b.planned - a.planned) * (ahead - a.kept)) / (b.kept - a.kept);
}
