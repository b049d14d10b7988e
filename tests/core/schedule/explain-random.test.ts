import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { openSeconds } from '../../../core/schedule/check-hours.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { Cause } from '../../../core/schedule/explain/causes.ts';
import { explain } from '../../../core/schedule/explain.ts';
import type { Problem, ProblemInput, Schedule } from '../../../core/schedule/problem.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../../core/schedule/rules/edd.ts';
import { startedBefore, must, seeds, timed } from './hand-shop.ts';
import { randomQueues, randomShop } from './random-shop.ts';

/** A random shop with random queues that respect what is fixed, decoded. */
function randomPlan(seed: number): { input: ProblemInput; problem: Problem; schedule: Schedule } {
  const input = { ...randomShop(seed), frozen: {}, pins: [] };
  const problem = must(buildProblem(input));
  return { input, problem, schedule: timed(problem, randomQueues(seed, input)) };
}

/** The hours with a stretch more. */
const lengthened = (open: readonly OpenInterval[], more: OpenInterval): OpenInterval[] =>
  [...open, more]
    .sort((a, b) => a.start - b.start)
    .reduce<OpenInterval[]>((joined, next) => {
      const last = joined.at(-1);
      if (last?.end !== next.start) return [...joined, next];
      return [...joined.slice(0, -1), { start: last.start, end: next.end }];
    }, []);

/** One of those in the way holds the thing on that machine. */
function expectHolder(input: ProblemInput, schedule: Schedule, thing: string, machine: string, cause: Cause) {
  expect(machine).not.toBe(cause.machine);
  const operations = new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o]));
  const holders = schedule.operations.filter(
    (line) =>
      line.machine === machine &&
      cause.blockedBy.includes(line.operation) &&
      [
        ...(operations.get(line.operation)!.holds ?? []),
        ...(operations.get(line.operation)!.machines?.find(({ id }) => id === machine)?.holds ?? []),
      ].includes(thing),
  );
  expect(holders.length).toBeGreaterThan(0);
}

describe('explanations in random shops', () => {
  it('an idle machine waits for a release that is still to come, or for a step before that is not done', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(seeds, (seed) => {
        const { input, problem, schedule } = randomPlan(seed);
        const ends = new Map(schedule.operations.map((line) => [line.operation, line.end]));
        for (const job of input.jobs)
          for (const cause of must(explain(problem, schedule, job.id)).causes) {
            if (cause.kind !== 'idle-for-release' && cause.kind !== 'queue-choice') continue;
            seen.add(cause.kind);
            for (const ahead of cause.blockedBy) {
              const other = input.jobs.find(({ operations }) => operations.some(({ id }) => id === ahead))!;
              const before = other.operations[other.operations.findIndex(({ id }) => id === ahead) - 1];
              if (cause.kind === 'idle-for-release') expect(other.release).toBeGreaterThan(cause.from);
              else expect(ends.get(before!.id)).toBeGreaterThan(cause.from);
            }
          }
      }),
      { numRuns: 500 },
    );
    expect(seen).toEqual(new Set(['idle-for-release', 'queue-choice']));
  });

  it('the causes cover the time up to the end exactly, and their seconds add up', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { input, problem, schedule } = randomPlan(seed);
        for (const job of input.jobs) {
          const { causes, seconds, end } = must(explain(problem, schedule, job.id));
          let at = Math.min(input.now, job.operations[0]!.started?.at ?? input.now);
          const from = at;
          for (const cause of causes) {
            expect(cause.from).toBe(at);
            expect(cause.seconds).toBe(cause.to - cause.from);
            expect(cause.seconds).toBeGreaterThan(0);
            at = cause.to;
          }
          expect(at).toBe(end);
          expect(end).toBe(schedule.ends[job.id]);
          expect(Object.values(seconds).reduce((a, b) => a + b, 0)).toBe(end - from);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('a machine is closed where it is said to be and open elsewhere, and what is in the way is really on it then', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { input, problem, schedule } = randomPlan(seed);
        for (const job of input.jobs)
          for (const cause of must(explain(problem, schedule, job.id)).causes) {
            const machine = input.machines.find((m) => m.id === cause.machine);
            if (machine === undefined) continue;
            const open = openSeconds(machine, cause.from, cause.to);
            expect(open).toBe(cause.kind === 'closed' ? 0 : cause.seconds);
            if (cause.kind === 'crew') expect(input.crew).not.toBeNull();
            if (cause.kind === 'held-elsewhere') {
              expect(Math.max(...cause.held.map(({ until }) => until))).toBeGreaterThanOrEqual(cause.to);
              for (const { thing, machine: home } of cause.held)
                expectHolder(input, schedule, thing, home, cause);
            }
            if (cause.kind === 'pinned-or-frozen') expect(cause.blockedBy.length).toBeGreaterThan(0);
            if (cause.kind !== 'waiting-for-machine') continue;
            const lines = schedule.operations.filter((line) => cause.blockedBy.includes(line.operation));
            const busy = lines.reduce(
              (sum, line) =>
                sum +
                openSeconds(
                  machine,
                  Math.max(cause.from, line.changeoverStart),
                  Math.min(cause.to, line.end),
                ),
              0,
            );
            const away = Math.max(0, (machine.availableFrom ?? 0) - cause.from);
            expect(busy).toBeGreaterThanOrEqual(cause.seconds - away);
          }
      }),
      { numRuns: 500 },
    );
  });

  it('without lots and started steps, the time worked on a line is its work', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { input, problem, schedule } = randomPlan(seed);
        for (const job of input.jobs) {
          if (job.operations.some((o) => o.started !== undefined || (o.transferShare ?? 1) < 1)) continue;
          const work = job.operations.reduce((sum, o) => {
            const { machine } = schedule.operations.find((line) => line.operation === o.id)!;
            return sum + (o.machines?.find((m) => m.id === machine)?.seconds ?? o.seconds);
          }, 0);
          expect(must(explain(problem, schedule, job.id)).seconds.work ?? 0).toBe(work);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('every change proposed breaks no rule, ends the line earlier, and has the figures it says', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = must(buildProblem(startedBefore(randomShop(seed))));
        const schedule = decode(problem, dispatch(problem, dueDateRule(problem)));
        fc.pre(schedule.ok && check(problem, schedule.value).length === 0);
        const before = must(schedule);
        for (const job of problem.input.jobs) {
          const { late, changes, cheapest, helpsMost } = must(explain(problem, before, job.id));
          expect(cheapest ?? helpsMost).toBe(changes[0] ?? null);
          if (late === 0) expect(changes).toEqual([]);
          for (const change of changes) {
            expect(change.end).toBeLessThan(before.ends[job.id]!);
            expect(change.late).toBe(Math.max(0, change.end - job.due!));
            const { overtime } = change;
            const longer =
              overtime === null
                ? problem
                : must(
                    buildProblem({
                      ...problem.input,
                      machines: problem.input.machines.map((m) =>
                        m.id === overtime.machine
                          ? {
                              ...m,
                              open: lengthened(m.open!, {
                                start: overtime.from,
                                end: overtime.from + overtime.seconds,
                              }),
                            }
                          : m,
                      ),
                    }),
                  );
            expect(check(longer, change.schedule)).toEqual([]);
            expect(timed(longer, change.queues)).toEqual(change.schedule);
            expect(change.end).toBe(change.schedule.ends[job.id]);
            expect(change.objectiveAdded).toBeCloseTo(change.schedule.objective - before.objective, 6);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
