import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SolverJob, type JobOptions } from '../../electron/service/solver-job.ts';
import type { FromSolver } from '../../electron/solver/messages.ts';
import { fakeSolvers } from './fake-solver.ts';
import { memoryLog } from './support.ts';

const SORRY = 'The work stopped. Nothing was changed; ask again.';
const plan = (objective: number) => ({ queues: {}, objective });
const counts = (step: number, bound: number | null = null) => ({ step, evaluations: 10 * step, bound });

/** A search of ten seconds by so many processes that do what the test tells them. */
function start(processes = 1, options: Partial<JobOptions<'search'>> = {}) {
  const fakes = fakeSolvers();
  const log = memoryLog();
  const told: { phase: string; objective: number | null; at: number }[] = [];
  const job = new SolverJob<'search'>({
    name: 'the search',
    sorry: SORRY,
    tasks: Array.from({ length: processes }, (_, seed) => ({
      kind: 'search',
      problem: {} as never,
      queues: {},
      seed,
    })),
    budgetMs: 10_000,
    isBetter: (a, b) => a.objective < b.objective,
    launch: fakes.launch,
    log,
    onChange: ({ state, best }) =>
      told.push({ phase: state.phase, objective: best?.objective ?? null, at: performance.now() }),
    ...options,
  });
  const message = (kind: 'progress' | 'done', objective: number | null, step = 1): FromSolver => ({
    kind,
    jobId: job.jobId,
    best: objective === null ? null : plan(objective),
    counts: counts(step),
  });
  return { job, told, log, message, processes: fakes.processes };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a job that goes well', () => {
  it('runs, tells its best so far, and is finished when its process says so', async () => {
    const { job, processes, message } = start();
    expect(processes[0]!.heard).toMatchObject([{ kind: 'start', jobId: job.jobId, budgetMs: 10_000 }]);
    expect(job.state).toMatchObject({ phase: 'running', seconds: 0, budgetSeconds: 10, message: null });
    processes[0]!.send(message('progress', 7));
    expect(job.best).toEqual(plan(7));
    vi.advanceTimersByTime(3000);
    processes[0]!.send(message('done', null, 2));
    expect(await job.end).toBe(job);
    expect(job.state).toMatchObject({ phase: 'finished', seconds: 3, message: null });
    expect(job.best).toEqual(plan(7));
    expect(job.counts).toEqual(counts(2));
    expect(processes[0]!.killed()).toBe(true);
    vi.advanceTimersByTime(60_000);
    expect(job.state).toMatchObject({ phase: 'finished', seconds: 3 });
  });

  it('tells its progress at most ten times a second, the newest of it always, and its end at once', () => {
    const { processes, message, told } = start();
    for (let k = 0; k < 100; k++) {
      processes[0]!.send(message('progress', 100 - k));
      vi.advanceTimersByTime(10);
    }
    expect(told.length).toBeGreaterThanOrEqual(9);
    told.slice(1).forEach(({ at }, k) => expect(at - told[k]!.at).toBeGreaterThanOrEqual(100));
    vi.advanceTimersByTime(100);
    expect(told.at(-1)).toMatchObject({ phase: 'running', objective: 1 });
    processes[0]!.send(message('done', 0));
    expect(told.at(-1)).toMatchObject({ phase: 'finished', objective: 0 });
    const { length } = told;
    vi.advanceTimersByTime(1000);
    expect(told).toHaveLength(length);
  });

  it('keeps the best of several processes, counts what all did, and ends when one has proven its plan', () => {
    const { job, processes, message } = start(2);
    const [first, second] = processes;
    first!.send({ ...message('progress', 5), counts: counts(3, 1) } as FromSolver);
    second!.send({ ...message('progress', 6), counts: counts(4, 2) } as FromSolver);
    expect(job.best).toEqual(plan(5));
    expect(job.counts).toEqual({ step: 7, evaluations: 70, bound: 2 });
    second!.send({ ...message('done', 4), counts: counts(5, 4) } as FromSolver);
    expect(first!.heard.at(-1)).toEqual({ kind: 'stop', jobId: job.jobId });
    expect(job.state.phase).toBe('running');
    first!.send(message('done', null));
    expect(job.state.phase).toBe('finished');
    expect(job.best).toEqual(plan(4));
  });

  it('ignores what is said of another job, and what comes when it is over', () => {
    const { job, processes, message, told } = start();
    processes[0]!.send({ ...message('done', 1), jobId: 'older' });
    processes[0]!.send({ kind: 'failed', jobId: 'older', message: 'late news' });
    expect(job.state.phase).toBe('running');
    expect(job.best).toBeNull();
    processes[0]!.send(message('done', 3));
    processes[0]!.send(message('progress', 2));
    processes[0]!.exit();
    expect(job.best).toEqual(plan(3));
    expect(job.state.phase).toBe('finished');
    expect(told).toHaveLength(1);
  });
});

describe('a job that is told to stop', () => {
  it('takes the best that its process still tells', () => {
    const { job, processes, message } = start();
    processes[0]!.send(message('progress', 5));
    job.stop();
    expect(processes[0]!.heard.at(-1)).toEqual({ kind: 'stop', jobId: job.jobId });
    expect(job.state.phase).toBe('running');
    processes[0]!.send(message('done', 4));
    expect(job.state).toMatchObject({ phase: 'stopped', message: null });
    expect(job.best).toEqual(plan(4));
  });

  it('ends a process that does not hear it, within a tenth of a second, and keeps what was found', () => {
    const { job, processes, message, log } = start();
    processes[0]!.send(message('progress', 5));
    job.stop();
    vi.advanceTimersByTime(100);
    expect(job.state).toMatchObject({ phase: 'stopped', message: null });
    expect(job.best).toEqual(plan(5));
    expect(processes[0]!.killed()).toBe(true);
    expect(log.lines).toEqual([]);
  });

  it('before its process has said anything is stopped as well, and none is started again', () => {
    const { job, processes } = start();
    job.stop();
    processes[0]!.exit();
    expect(job.state).toMatchObject({ phase: 'stopped', message: null });
    expect(job.best).toBeNull();
    expect(processes).toHaveLength(1);
  });

  it('at once where its process hears nothing while it works', () => {
    const { job, processes } = start(1, { stopGraceMs: 0 });
    job.stop();
    expect(job.state.phase).toBe('stopped');
    expect(processes[0]!.killed()).toBe(true);
  });

  it('after its end is left as it ended', () => {
    const { job, processes, message, told } = start();
    processes[0]!.send(message('done', 1));
    job.stop();
    vi.advanceTimersByTime(1000);
    expect(job.state.phase).toBe('finished');
    expect(told).toHaveLength(1);
  });
});

describe('a job whose process dies', () => {
  it('is begun once more for the time that is left, with the best so far kept', () => {
    const { job, processes, message, log } = start();
    processes[0]!.send(message('progress', 5));
    vi.advanceTimersByTime(4000);
    processes[0]!.exit();
    expect(processes[1]!.heard).toMatchObject([{ kind: 'start', jobId: job.jobId, budgetMs: 6000 }]);
    expect(log.lines).toEqual([expect.stringMatching(/the search .* had trouble .*started once more/)]);
    processes[0]!.send(message('progress', 1));
    processes[1]!.send(message('done', 8));
    expect(job.state).toMatchObject({ phase: 'finished', message: null });
    expect(job.best).toEqual(plan(5));
  });

  it('twice is told as a sentence, and what was found is kept', () => {
    const { job, processes, message, log } = start();
    processes[0]!.send(message('progress', 5));
    processes[0]!.exit();
    processes[1]!.exit();
    expect(job.state).toMatchObject({ phase: 'failed', message: SORRY });
    expect(job.failure).toBe('its process ended');
    expect(job.best).toEqual(plan(5));
    expect(processes).toHaveLength(2);
    expect(log.lines).toHaveLength(2);
  });

  it('has not failed while another of its processes gets there', () => {
    const { job, processes, message } = start(2);
    processes[0]!.exit();
    processes[2]!.exit();
    processes[1]!.send(message('done', 3));
    expect(job.state).toMatchObject({ phase: 'finished', message: null });
    expect(job.failure).toBe('its process ended');
  });

  it('by a bug is not begun again: it would fail the same way', () => {
    const { job, processes, log } = start();
    processes[0]!.send({ kind: 'failed', jobId: job.jobId, message: 'TypeError' });
    expect(job.state).toMatchObject({ phase: 'failed', message: SORRY });
    expect(processes).toHaveLength(1);
    expect(log.lines.join()).toMatch(/TypeError/);
  });

  it('or says nothing long after its time is ended', () => {
    const { job, processes, log } = start();
    vi.advanceTimersByTime(10_000 + 11_000);
    expect(job.state.phase).toBe('running');
    vi.advanceTimersByTime(2000);
    expect(job.state).toMatchObject({ phase: 'failed', message: SORRY });
    expect(processes[0]!.killed()).toBe(true);
    expect(log.lines.join()).toMatch(/did not answer in time/);
  });
});

it('a task that is refused is told in the words of the refusal', () => {
  const { job, processes } = start();
  processes[0]!.send({ kind: 'refused', jobId: job.jobId, message: 'Line 9 is not in the plan.' });
  expect(job.state).toMatchObject({ phase: 'failed', message: 'Line 9 is not in the plan.' });
  expect(job).toMatchObject({ failure: null, refusal: 'Line 9 is not in the plan.' });
});
