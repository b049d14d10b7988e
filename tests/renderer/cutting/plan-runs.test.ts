import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runKey, type RunInput } from '../../../core/cutting/run.ts';
import { cutRuns, planQuickly, type RunCut } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { sameMetal } from '../../../core/planning/runs.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { planAll } from '../../../renderer/queries/plan-runs.ts';
import { valueOf } from '../../../electron/refused.ts';
import { NOW } from '../../support/builders.ts';

/** All runs of the demo shop planned beside the window: whoever plans one is handed in, so that no worker is needed. */

const shop = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), NOW);
const view = valueOf(viewPlan(shop, NOW));
const oneByOne = [...cutRuns(shop, view)];
const plans = new Map(oneByOne.map(({ input }) => [runKey(input), planQuickly(input)]));
const quickly = (input: RunInput) => plans.get(runKey(input)) ?? planQuickly(input);
const usual = { shop, view, answers: [], opened: undefined, tell: () => undefined };
const going = () => new AbortController().signal;

describe('all runs of a plan, planned beside the window', () => {
  it('are those of planning one after the other: sheets, steps and stock', async () => {
    const asked: string[] = [];
    const told: (readonly RunCut[])[] = [];
    const tell = (cuts: readonly RunCut[]) => void told.push(cuts);
    const cuts = await planAll({ ...usual, signal: going(), tell }, (input) => {
      asked.push(runKey(input));
      return Promise.resolve(quickly(input));
    });
    expect(cuts.length).toBe(oneByOne.length);
    expect(cuts).toEqual(oneByOne);
    expect(new Set(asked).size).toBe(asked.length);
    // What is told on the way is part of it, in the order of the runs, and grows.
    expect(told.length).toBeGreaterThan(1);
    const sizes = told.map(({ length }) => length);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    const starts = told.at(-1)!.map(({ run }) => run.start);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
  });

  it('begin with the metal of the run that is opened', async () => {
    const last = oneByOne.at(-1)!;
    const opened = last.run.operations[0]!.line.id;
    const told: (readonly RunCut[])[] = [];
    const tell = (cuts: readonly RunCut[]) => void told.push(cuts);
    await planAll({ ...usual, signal: going(), opened, tell }, (input) => Promise.resolve(quickly(input)));
    expect(told).toHaveLength(1);
    expect(told[0]).toEqual(oneByOne.filter(({ run }) => sameMetal(run, last.run)));
  });

  it('show the list that the host found where it is better', async () => {
    const { input, plan } = oneByOne.find((cut) => cut.plan.ok)!;
    const found = { ...valueOf(plan), costCents: 1 };
    const answers = [{ key: runKey(input), plan: found, settled: true }];
    const cuts = await planAll({ ...usual, signal: going(), answers }, (own) =>
      Promise.resolve(quickly(own)),
    );
    const shown = cuts.find((cut) => runKey(cut.input) === runKey(input))!;
    expect(valueOf(shown.plan).costCents).toBe(1);
  });

  it('end when nobody waits for them any more', async () => {
    const stop = new AbortController();
    const planning = planAll({ ...usual, signal: stop.signal }, (input) => Promise.resolve(quickly(input)));
    stop.abort(new Error('gone'));
    await expect(planning).rejects.toThrow('gone');
  });
});
