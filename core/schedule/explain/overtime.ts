import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import type { NumberedQueues } from '../numbered-queues.ts';
import { draftOf, endOf, stepsOf, thin, type Draft } from '../what-if/draft.ts';
import { workingTime } from '../working-time.ts';

/** Extra open time on one machine, right after it would close. */
export interface Overtime {
  readonly machine: string;
  readonly from: number;
  readonly seconds: number;
}

/** Overtime with what it makes of the plan. */
interface OvertimeTrial {
  readonly overtime: Overtime;
  readonly problem: Problem;
  readonly draft: Draft;
}

/** The longest stretch of overtime that is thought of (our own limit; local rules on working hours come first). */
const MOST_SECONDS = 4 * 3600;
const MINUTE = 60;
/** Closings tried per machine, evenly spread. */
const MOST_CLOSINGS = 24;
const MOST_CLOSINGS_CONTENDED = 4;

/**
 * The least overtime, in whole minutes and after one closing of one machine, with which a job ends by `due`; of equally
 * short ones the latest. If none does, the longest after the closing that brings its end forward most.
 * @returns null when no overtime helps: its machines never close before it ends, or it waits for something else
 */
export function leastOvertime(
  problem: Problem,
  draft: Draft,
  job: number,
  due: number,
): OvertimeTrial | null {
  const machines = [...new Set(stepsOf(problem, job).map((o) => draft.timing.machine[o]!))];
  const longest = machines
    .flatMap((m) => closings(problem, m, endOf(problem, draft, job)))
    .flatMap(({ machine, from, seconds }) => tryOvertime(problem, draft.queues, { machine, from, seconds }));
  const end = (trial: OvertimeTrial) => endOf(problem, trial.draft, job);
  let best: OvertimeTrial | null = null;
  for (const trial of longest.filter((each) => end(each) <= due).reverse())
    best = fewestMinutes(problem, trial, job, due, best === null ? Infinity : minutes(best) - 1) ?? best;
  if (best !== null) return best;
  const helping = longest.filter((trial) => end(trial) < endOf(problem, draft, job));
  return helping.reduce<OvertimeTrial | null>(
    (most, trial) => (most === null || end(trial) < end(most) ? trial : most),
    null,
  );
}

const minutes = ({ overtime }: OvertimeTrial): number => Math.ceil(overtime.seconds / MINUTE);

/** Each closing of a machine after `now` and before `end`, with the overtime there is room for. */
function closings(problem: Problem, m: number, end: number): readonly Overtime[] {
  const { id, open, noOvertime = [], unlimited } = problem.tracks[m]!.machine;
  // What is done elsewhere is no matter of our hours.
  if (open === null || unlimited) return [];
  const found = open.slice(0, -1).flatMap((interval, k): Overtime[] => {
    const from = interval.end;
    if (from >= end || from < problem.availableFrom[m]!) return [];
    const barred = noOvertime.find((stretch) => stretch.end > from)?.start ?? Infinity;
    const seconds = Math.min(MOST_SECONDS, open[k + 1]!.start - from, barred - from);
    return seconds > 0 ? [{ machine: id, from, seconds }] : [];
  });
  return thin(found, isContended(problem) ? MOST_CLOSINGS_CONTENDED : MOST_CLOSINGS);
}

/** The same overtime with as few minutes as still save the job; null when those are more than `most`. */
function fewestMinutes(
  problem: Problem,
  longest: OvertimeTrial,
  job: number,
  due: number,
  most: number,
): OvertimeTrial | null {
  const trySaving = (count: number) =>
    tryOvertime(problem, longest.draft.queues, {
      ...longest.overtime,
      seconds: Math.min(longest.overtime.seconds, count * MINUTE),
    }).find((trial) => endOf(problem, trial.draft, job) <= due);
  let low = 1;
  let high = Math.min(minutes(longest), most);
  let best = high < low ? undefined : trySaving(high);
  while (best !== undefined && low < high) {
    const middle = (low + high) >> 1;
    const trial = trySaving(middle);
    if (trial === undefined) low = middle + 1;
    else {
      best = trial;
      high = middle;
    }
  }
  return best ?? null;
}

function tryOvertime(problem: Problem, queues: NumberedQueues, overtime: Overtime): OvertimeTrial[] {
  const longer = withOvertime(problem, overtime);
  const draft = draftOf(longer, queues);
  return draft === null ? [] : [{ overtime, problem: longer, draft }];
}

/** The problem with a machine open for longer after one closing. */
function withOvertime(problem: Problem, { machine, from, seconds }: Overtime): Problem {
  const until = from + seconds;
  const machines = problem.input.machines.map((each) => {
    if (each.id !== machine) return each;
    const open = each.open!.flatMap(({ start, end }) => {
      if (start === until) return [];
      if (end !== from) return [{ start, end }];
      const next = each.open!.find((interval) => interval.start === until);
      return [{ start, end: next?.end ?? until }];
    });
    return { ...each, open };
  });
  const byId = new Map(machines.map((each) => [each.id, each]));
  const tracks = problem.tracks.map((track) => ({ ...track, machine: byId.get(track.machine.id)! }));
  return {
    ...problem,
    tracks,
    input: { ...problem.input, machines },
    open: tracks.map((track, m) =>
      track.machine.id === machine ? workingTime(track.machine.open) : problem.open[m]!,
    ),
  };
}
