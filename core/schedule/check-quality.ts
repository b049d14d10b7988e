import type { Violation } from './violation.ts';
import type { ProblemInput, Schedule, Terms } from './problem.ts';

/** The schedule's ends, terms and objective, worked out again from its lines. */
export function checkQuality(input: ProblemInput, schedule: Schedule): Violation[] {
  const ends = new Map<string, number>();
  for (const line of schedule.operations) {
    const job = input.jobs.find((each) => each.id === line.job)!;
    if (line.index === job.operations.length - 1) ends.set(job.id, line.end);
  }
  const sum = (of: (job: ProblemInput['jobs'][number], end: number) => number) =>
    input.jobs.reduce((total, job) => total + of(job, ends.get(job.id)!), 0);
  const terms: Terms = {
    weightedTardiness: sum((job, end) =>
      job.due !== null && end > job.due ? job.weight * (end - job.due) : 0,
    ),
    changeover: schedule.operations.reduce((total, line) => total + line.changeoverSeconds, 0),
    makespan: Math.max(0, ...input.jobs.map((job) => ends.get(job.id)! - input.now)),
    flowTime: sum((job, end) => end - job.release),
    stability: sum((job, end) =>
      input.reference?.[job.id] === undefined ? 0 : Math.abs(end - input.reference[job.id]!),
    ),
  };
  const names = Object.keys(terms) as (keyof Terms)[];
  const objective = names.reduce((total, name) => total + input.objective[name] * terms[name], 0);
  const wrong = (name: string, right: number, shown: number | undefined): Violation[] =>
    Math.abs(right - (shown ?? NaN)) <= 1e-9 * Math.max(1, Math.abs(right))
      ? []
      : [{ rule: 'terms', operation: name, message: `${name} is ${right}, not ${shown}.` }];
  return [
    ...names.flatMap((name) => wrong(name, terms[name], schedule.terms[name])),
    ...wrong('objective', objective, schedule.objective),
    ...input.jobs.flatMap((job) => wrong(`end of ${job.id}`, ends.get(job.id)!, schedule.ends[job.id])),
  ];
}
