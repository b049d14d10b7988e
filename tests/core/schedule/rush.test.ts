import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { Problem, Queues } from '../../../core/schedule/problem.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { familyRule } from '../../../core/schedule/rules/family.ts';
import { insertRush, replanRush } from '../../../core/schedule/rush.ts';
import { advisedWay, cheapestWay } from '../../../core/schedule/rush/advise.ts';
import type { RushWay } from '../../../core/schedule/rush/way.ts';
import { planWithout, withoutJobs } from '../../../core/schedule/what-if/question.ts';
import { aJob, aMachine, aProblem, startedBefore, must, queued, refusal, seeds, timed } from './hand-shop.ts';
import { randomShop } from './random-shop.ts';

const ways = (problem: Problem, queues: Queues, jobs: readonly string[]) => {
  const [front, run] = must(insertRush(problem, queues, jobs));
  return { front: front!, run: run! };
};

describe('a rush at the front (worked by hand)', () => {
  it('goes before everything that waits, and everything else waits for it', () => {
    const problem = aProblem({
      jobs: [aJob('A', [100, null], 120), aJob('B', [100, null], 400), aJob('R', [50, null], 60)],
    });
    expect(ways(problem, queued(problem, { S1: 'A B R' }), ['R']).front).toMatchObject({
      queues: { S1: ['R:shear', 'A:shear', 'B:shear'] },
      ready: 50,
      late: 0,
      later: [
        { job: 'A', before: 100, after: 150, lateBefore: 0, lateAfter: 30 },
        { job: 'B', before: 200, after: 250, lateBefore: 0, lateAfter: 0 },
      ],
      earlier: [],
      objectiveAdded: 30,
    });
  });

  it('stays behind what is frozen or started', () => {
    const started = { shear: { started: { machine: 'S1', at: 0 } } };
    const problem = aProblem({
      now: 10,
      jobs: [
        aJob('A', [100, null], null, started),
        aJob('B', [100, null]),
        aJob('C', [100, null]),
        aJob('R', [50, null]),
      ],
      frozen: { S1: ['B:shear'] },
    });
    const { front } = ways(problem, queued(problem, { S1: 'A B C R' }), ['R']);
    expect(front.queues.S1).toEqual(['A:shear', 'B:shear', 'R:shear', 'C:shear']);
    expect(front.ready).toBe(250);
  });

  it('comes to the brake when its blanks are cut, which may keep the brake free for it for a moment', () => {
    // Blanks at 50. After A (until 40) the brake is held 10 s: done at 70. After C it would be 100.
    const problem = aProblem({
      jobs: [aJob('A', [null, 40]), aJob('C', [null, 40]), aJob('D', [null, 40]), aJob('R', [50, 20])],
    });
    const { front } = ways(problem, queued(problem, { S1: 'R', B1: 'A C D R' }), ['R']);
    expect(front.queues.B1).toEqual(['A:brake', 'R:brake', 'C:brake', 'D:brake']);
    expect(front.ready).toBe(70);
  });

  it('takes the machine on which it is done first', () => {
    const problem = aProblem({
      machines: [aMachine('B1'), aMachine('B2')],
      jobs: [
        aJob('A', [null, 100], null, { brake: { started: { machine: 'B1', at: 0 } } }),
        aJob('R', [null, 30]),
      ],
    });
    expect(ways(problem, queued(problem, { B1: 'A R' }), ['R']).front).toMatchObject({
      queues: { B2: ['R:brake'] },
      ready: 30,
    });
  });

  it('of two lines the more urgent one is foremost', () => {
    const problem = aProblem({
      jobs: [aJob('A', [10, null]), aJob('R', [50, null], 300), aJob('Q', [50, null], 60)],
    });
    const { front } = ways(problem, queued(problem, { S1: 'A R Q' }), ['R', 'Q']);
    expect(front.queues.S1).toEqual(['Q:shear', 'R:shear', 'A:shear']);
  });
});

describe('a rush in its run (worked by hand)', () => {
  // Moss until 200, five minutes of changeover, bone from 500 to 700.
  const shop = (due: number) =>
    aProblem({
      machines: [
        aMachine('S1', {
          initial: { colour: 'moss' },
          changeover: { combine: 'sum', attributes: { colour: 300 } },
        }),
      ],
      jobs: [
        ...['A', 'B'].map((id) => aJob(id, [100, null], 5000, { attributes: { colour: 'moss' } })),
        ...['C', 'D'].map((id) => aJob(id, [100, null], 5000, { attributes: { colour: 'bone' } })),
        aJob('R', [50, null], due, { attributes: { colour: 'bone' } }),
      ],
    });
  const run = (due: number): RushWay => ways(shop(due), queued(shop(due), { S1: 'A B C D R' }), ['R']).run;

  it('joins the lines of its colour at the first position that keeps its date, without a changeover more', () => {
    expect(run(600)).toMatchObject({
      queues: { S1: ['A:shear', 'B:shear', 'R:shear', 'C:shear', 'D:shear'] },
      ready: 550,
      late: 0,
      changeoverSecondsAdded: 0,
      changeoversAdded: 0,
      later: [
        { job: 'C', before: 600, after: 650 },
        { job: 'D', before: 700, after: 750 },
      ],
    });
  });

  it('pays for changeovers when its own run comes too late for its date', () => {
    // At the front: moss to bone, its 50 s, bone to moss, and the changeover there was: 600 s more.
    expect(run(400)).toMatchObject({
      ready: 350,
      late: 0,
      changeoverSecondsAdded: 600,
      changeoversAdded: 2,
    });
  });

  it('is as little late as it can be when no position keeps its date', () => {
    expect(run(100)).toMatchObject({ ready: 350, late: 250 });
  });
});

describe('a rush, all re-planned', () => {
  it('finds the order that neither quick way has', () => {
    // B is in front, so A is late whatever R does. Only A, then R, then B serves all three.
    const problem = aProblem({
      jobs: [aJob('B', [100, null], 500), aJob('A', [100, null], 100), aJob('R', [50, null], 150)],
    });
    const queues = queued(problem, { S1: 'B A R' });
    const found = [...must(replanRush(problem, queues, ['R'], { seed: 1 }))].at(-1)!;
    expect(found).toMatchObject({ way: 'replan', queues: { S1: ['A:shear', 'R:shear', 'B:shear'] } });
    expect(found.schedule.terms.weightedTardiness).toBe(0);
    expect(found.earlier).toMatchObject([{ job: 'A', lateBefore: 100, lateAfter: 0 }]);
  });

  it('keeps the rush’s own date before it saves cost', () => {
    // A counts ten times. R first: A is 50 s late, which costs 500. A first would cost 100, but R would be 100 s late.
    const problem = aProblem({
      jobs: [aJob('A', [100, null], 100, { weight: 10 }), aJob('R', [50, null], 50)],
    });
    const { front } = ways(problem, queued(problem, { S1: 'A R' }), ['R']);
    const found = [...must(replanRush(problem, front.queues, ['R'], { seed: 1 }))].at(-1)!;
    expect(found).toMatchObject({ late: 0, queues: { S1: ['R:shear', 'A:shear'] } });
  });
});

describe('the way that is advised', () => {
  const way = (late: number, objectiveAdded: number) => ({ late, objectiveAdded });

  it('is the one that keeps the rush’s date, though another costs less; of those that keep it the cheapest', () => {
    const ways = [way(3600, 10), way(0, 500), way(0, 400)];
    expect(advisedWay(ways)).toBe(ways[2]);
    expect(cheapestWay(ways)).toBe(ways[0]);
  });

  it('is the least late one when none keeps the date, the first of equal ones', () => {
    const ways = [way(7200, 10), way(3600, 500), way(3600, 500)];
    expect(advisedWay(ways)).toBe(ways[1]);
  });
});

describe('idle stretches that a way leaves (worked by hand)', () => {
  it('take work that waits behind, where that makes the rush no later', () => {
    // R's blanks are ready at 50. The brake stands still until then; C (40 s) fits, D (60 s) does not.
    const problem = aProblem({
      jobs: [aJob('D', [null, 60], 65), aJob('C', [null, 40], 1000), aJob('R', [50, 20], 75)],
    });
    const { front } = ways(problem, queued(problem, { S1: 'R', B1: 'D C R' }), ['R']);
    expect(front.queues.B1).toEqual(['C:brake', 'R:brake', 'D:brake']);
    expect(front).toMatchObject({ ready: 70, late: 0 });
  });
});

describe('what a rush is refused for', () => {
  const problem = aProblem({ jobs: [aJob('A', [100, null])] });
  const queues = queued(problem, { S1: 'A' });

  it('a line that is not in the plan, no line at all, queues that leave something out', () => {
    expect(refusal(insertRush(problem, queues, ['X']))).toContain('Line X is not among the lines');
    expect(refusal(insertRush(problem, queues, []))).toContain('No line was named');
    expect(refusal(insertRush(problem, { S1: [] }, ['A']))).toContain('A:shear is in no queue');
    expect(refusal(replanRush(problem, queues, ['X'], { seed: 1 }))).toContain('Line X is not among');
    expect(refusal(withoutJobs(problem, ['X']))).toContain('Line X is not among the lines');
  });
});

/** A random shop with a plan that keeps everything fixed in place, and a line or two of it as the rush. */
function randomRush(seed: number): { problem: Problem; queues: Queues; rush: string[] } | null {
  const problem = must(buildProblem(startedBefore(randomShop(seed, 7))));
  const queues = dispatch(problem, familyRule(problem));
  const plan = decode(problem, queues);
  const rush = problem.input.jobs.slice(0, 1 + (seed % 2)).map((job) => job.id);
  if (rush.length === 0 || !plan.ok || check(problem, plan.value).length > 0) return null;
  return { problem, queues, rush };
}

describe('rushes in random shops', () => {
  it('every way breaks no rule, holds what is fixed, and says truly whom it delays and what it costs', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const asked = randomRush(seed);
        fc.pre(asked !== null);
        const { problem, queues, rush } = asked!;
        const before = must(planWithout(problem, queues, rush));
        const quick = insertRush(problem, queues, rush);
        // A pin in front of its own first step leaves no position: that is said, not hidden.
        if (!quick.ok) return void expect(refusal(quick)).toContain('cannot be fitted in anywhere');
        const [replanned] = must(replanRush(problem, queues, rush, { seed }));
        for (const way of [...quick.value, ...(replanned ? [replanned] : [])]) {
          expect(check(problem, way.schedule)).toEqual([]);
          expect(timed(problem, way.queues)).toEqual(way.schedule);
          const { ends } = way.schedule;
          expect(way.ready).toBe(Math.max(...rush.map((id) => ends[id]!)));
          const others = problem.input.jobs.filter(({ id }) => !rush.includes(id));
          const delayed = others.filter(({ id }) => ends[id]! > before.ends[id]!);
          expect(way.later.map(({ job }) => job).sort()).toEqual(delayed.map(({ id }) => id).sort());
          expect(way.objectiveAdded).toBeCloseTo(way.schedule.objective - before.objective, 6);
          expect(way.changeoverSecondsAdded).toBe(way.schedule.terms.changeover - before.terms.changeover);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('the shop without some lines plans the others as if those had never come in', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const asked = randomRush(seed);
        fc.pre(asked !== null);
        const { problem, queues, rush } = asked!;
        const without = must(withoutJobs(problem, rush));
        const before = must(planWithout(problem, queues, rush));
        expect(Object.keys(before.ends)).toEqual(
          problem.input.jobs.map(({ id }) => id).filter((id) => !rush.includes(id)),
        );
        expect(check(without, before)).toEqual([]);
        if (problem.input.pins?.length) return;
        // Where any number go on at once there is no order but that of time.
        const kept = problem.input.machines.filter(({ unlimited }) => !unlimited);
        const stood = new Set(kept.map(({ id }) => id));
        const order = before.operations.flatMap((o) => (stood.has(o.machine) ? [o.operation] : []));
        expect(order).toEqual(kept.flatMap(({ id }) => queues[id]!.filter((o) => order.includes(o))));
      }),
      { numRuns: 300 },
    );
  });
});
