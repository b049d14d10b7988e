import { describe, expect, it } from 'vitest';
import { lowerBound } from '../../core/schedule/bounds.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Queues, Schedule } from '../../core/schedule/problem.ts';
import { atcsRule, lookAhead } from '../../core/schedule/rules/atcs.ts';
import { dispatch } from '../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../core/schedule/rules/edd.ts';
import { familyRule } from '../../core/schedule/rules/family.ts';
import { johnsonRule } from '../../core/schedule/rules/johnson.ts';
import {
  none,
  tardiness,
  makespan,
  built,
  planned,
  searched,
  jobsOf,
  machine,
  oneStep,
  oneMachine,
  flowShop,
} from './scheduling-shops.ts';

// S1. Data and parameters: M. L. Pinedo, Scheduling: Theory, Algorithms, and Systems, section 14.2 (from memory);
// optimum and the other rules' values recomputed by brute force.
describe('apparent tardiness cost with setups, a textbook example of four jobs', () => {
  const p = [13, 9, 13, 10];
  const d = [12, 37, 21, 22];
  const w = [2, 4, 2, 5];
  const setups = [
    [0, 4, 1, 3],
    [0, 0, 1, 0],
    [1, 2, 0, 3],
    [4, 3, 1, 0],
  ];
  const problem = built({
    name: 'S1',
    now: 0,
    objective: tardiness,
    machines: [
      {
        ...machine('M'),
        changeover: {
          combine: 'sum',
          attributes: {},
          pairs: { attribute: 'job', values: ['1', '2', '3', '4'], seconds: setups, initial: [1, 1, 3, 4] },
        },
      },
    ],
    jobs: p.map((seconds, k) => ({
      id: `${k + 1}`,
      release: 0,
      due: d[k]!,
      weight: w[k]!,
      operations: [{ id: `${k + 1}:M`, stage: 'M', seconds, attributes: { job: `${k + 1}` } }],
    })),
  });

  it('ATCS goes 2-4-3-1 for a weighted tardiness of 98, the optimum', () => {
    const schedule = planned(problem, dispatch(problem, atcsRule(problem)));
    expect([jobsOf(schedule, 'M'), schedule.objective]).toEqual(['2431', 98]);
    expect(searched(problem, 20).objective).toBe(98);
  });
  it('due-date order gives 177', () => {
    expect(planned(problem, dispatch(problem, dueDateRule(problem))).objective).toBe(177);
  });
  it('mean work is 11.25 and mean changeover 2, which make K1 4.972 and K2 0.671', () => {
    const { meanSeconds, meanChangeover, k1, k2 } = lookAhead(problem);
    expect([meanSeconds, meanChangeover]).toEqual([11.25, 2]);
    expect(k1).toBeCloseTo(4.972, 3);
    expect(k2).toBeCloseTo(0.671, 3);
  });
});

// S2. First: A. Feinberg's course notes MSCI 306M, published makespan 28. Second and third: textbook examples (the third
// believed to be Krajewski's), from memory. All equal brute force. The last is posted as 26 on a homework site; it is 28.
describe("Johnson's rule, textbook examples", () => {
  const examples = [
    {
      times: [
        ['A', 4, 2],
        ['B', 3, 5],
        ['C', 5, 1],
        ['D', 7, 3],
        ['E', 8, 6],
      ],
      order: 'BEDAC',
      span: 28,
    },
    {
      times: [
        ['A', 5, 2],
        ['B', 3, 6],
        ['C', 8, 4],
        ['D', 10, 7],
        ['E', 7, 12],
      ],
      order: 'BEDCA',
      span: 35,
    },
    {
      times: [
        ['1', 12, 22],
        ['2', 4, 5],
        ['3', 5, 3],
        ['4', 15, 16],
        ['5', 10, 8],
      ],
      order: '21453',
      span: 65,
    },
    {
      times: [
        ['L', 10, 2],
        ['M', 5, 4],
        ['N', 7, 5],
        ['O', 3, 6],
        ['P', 1, 7],
      ],
      order: 'PONML',
      span: 28,
    },
  ] as const;
  for (const { times, order, span } of examples)
    it(`goes ${order} for a makespan of ${span}, which the bound proves`, () => {
      const problem = flowShop(times as unknown as [string, number, number][]);
      const schedule = planned(problem, dispatch(problem, johnsonRule(problem)));
      expect([jobsOf(schedule, 'M1'), jobsOf(schedule, 'M2'), schedule.terms.makespan]).toEqual([
        order,
        order,
        span,
      ]);
      expect(lowerBound(problem).value).toBe(span);
      expect([...improve(problem, { seed: 1 })].at(-1)).toMatchObject({ objective: span, status: 'optimal' });
    });
});

// S3. Solved problem 15.2 and its sequel in an operations-management textbook (believed Heizer and Render); the averages of
// the shortest-first row and the 5.5 of due-date order match the published answers, the rest is recomputed.
describe('dispatching six jobs, a textbook example', () => {
  const data = [
    ['A', 6, 22],
    ['B', 12, 14],
    ['C', 14, 30],
    ['D', 2, 18],
    ['E', 10, 25],
    ['F', 4, 34],
  ] as const;
  const problem = oneMachine(
    data.map(([id, seconds, due]) => oneStep(id, seconds, due)),
    { ...none, flowTime: 1 },
  );
  const figures = (schedule: Schedule) => ({
    order: jobsOf(schedule, 'M'),
    completion: Math.round((schedule.terms.flowTime / 6) * 100) / 100,
    lateness: Math.round((schedule.terms.weightedTardiness / 6) * 100) / 100,
    late: data.filter(([id, , due]) => schedule.ends[id]! > due).length,
  });
  it('first come, first served: mean completion 30.33, mean tardiness 9.17, five late', () => {
    const listed = { M: data.map(([id]) => `${id}:M`) };
    expect(figures(planned(problem, listed))).toEqual({
      order: 'ABCDEF',
      completion: 30.33,
      lateness: 9.17,
      late: 5,
    });
  });
  it('shortest first: mean completion 20.67, mean tardiness 6.33, two late', () => {
    const shortest = { M: [...'DFAEBC'].map((id) => `${id}:M`) };
    expect(figures(planned(problem, shortest))).toEqual({
      order: 'DFAEBC',
      completion: 20.67,
      lateness: 6.33,
      late: 2,
    });
  });
  it('earliest due date: mean completion 28.00, mean tardiness 5.50, three late', () => {
    expect(figures(planned(problem, dispatch(problem, dueDateRule(problem))))).toEqual({
      order: 'BDAECF',
      completion: 28,
      lateness: 5.5,
      late: 3,
    });
  });
});

// S3, second set: an operations-management textbook (from memory); the figures are those taught with it.
it('dispatching five jobs: mean completion and tardiness as listed, shortest, due-date and longest first', () => {
  const data = [
    ['A', 6, 8],
    ['B', 2, 6],
    ['C', 8, 18],
    ['D', 3, 15],
    ['E', 9, 23],
  ] as const;
  const jobs = data.map(([id, seconds, due]) => oneStep(id, seconds, due));
  const problem = oneMachine(jobs, { ...none, flowTime: 1 });
  const means = (queues: Queues) => {
    const { flowTime, weightedTardiness } = planned(problem, queues).terms;
    return [flowTime / 5, weightedTardiness / 5];
  };
  const shortestFirst = { M: [...'BDACE'].map((id) => `${id}:M`) };
  const longestFirst = { M: [...'ECADB'].map((id) => `${id}:M`) };
  expect(means({ M: [...'ABCDE'].map((id) => `${id}:M`) })).toEqual([15.4, 2.2]);
  expect(means(shortestFirst)).toEqual([13, 1.8]);
  expect(means(dispatch(problem, dueDateRule(problem)))).toEqual([13.6, 1.2]);
  expect(means(longestFirst)).toEqual([20.6, 9.6]);
});

// S6. Worked by hand for this project, all 24 orders tried: colour runs against due dates, minutes.
describe('colour runs against due dates', () => {
  const data = [
    ['W1', 30, 60, 'white'],
    ['B1', 40, 90, 'brown'],
    ['W2', 30, 150, 'white'],
    ['B2', 20, 150, 'brown'],
  ] as const;
  const problem = built({
    name: 'S6',
    now: 0,
    objective: tardiness,
    machines: [
      {
        ...machine('M'),
        initial: { colour: 'bare' },
        changeover: { combine: 'sum', attributes: { colour: 12 } },
      },
    ],
    jobs: data.map(([id, seconds, due, colour]) => ({
      id,
      release: 0,
      due,
      weight: 1,
      operations: [{ id: `${id}:M`, stage: 'M', seconds, attributes: { colour } }],
    })),
  });
  const row = (queues: Queues) => {
    const { terms } = planned(problem, queues);
    return [terms.changeover / 12, terms.makespan, terms.weightedTardiness];
  };
  it('pure due-date order: 4 changes, done at 168, 22 late', () =>
    expect(row(dispatch(problem, dueDateRule(problem)))).toEqual([4, 168, 22]));
  it('full colour runs: 2 changes, done at 144, 34 late', () =>
    expect(row(dispatch(problem, familyRule(problem)))).toEqual([2, 144, 34]));
  it('the search finds the best of all 24 orders: 3 changes, done at 156, 10 late', () => {
    const { terms } = searched(problem, 20);
    expect([terms.changeover / 12, terms.makespan, terms.weightedTardiness]).toEqual([3, 156, 10]);
  });
});

// J. F. Muth and G. L. Thompson (eds.), Industrial Scheduling, 1963: the 6 × 6 instance of Fisher and Thompson; 55 is optimal.
it('the six by six job shop of Fisher and Thompson is done at 55', () => {
  const routes = [
    [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
    [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
    [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
    [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
    [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
    [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
  ];
  const problem = built({
    name: 'six by six',
    now: 0,
    objective: makespan,
    machines: Array.from({ length: 6 }, (_, m) => machine(`M${m}`)),
    jobs: routes.map((route, j) => ({
      id: `${j}`,
      release: 0,
      due: null,
      weight: 1,
      operations: Array.from({ length: 6 }, (_, k) => ({
        id: `${j}:${k}`,
        stage: `M${route[2 * k]}`,
        seconds: route[2 * k + 1]!,
      })),
    })),
  });
  expect(searched(problem, 60).terms.makespan).toBe(55);
});
