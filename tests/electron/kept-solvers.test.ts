import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { keptSolvers } from '../../electron/service/kept-solvers.ts';
import type { FromSolver } from '../../electron/solver/messages.ts';
import { fakeSolvers } from './fake-solver.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function start() {
  const { launch, processes } = fakeSolvers();
  const kept = keptSolvers(launch, 60_000);
  /** One job, as far as the test takes it. */
  const begin = () => {
    const heard: FromSolver[] = [];
    const solver = kept.launch();
    solver.onMessage((message) => heard.push(message));
    return { solver, heard };
  };
  return { kept, begin, processes };
}
const done: FromSolver = { kind: 'done', jobId: 'a', best: null, counts: null };

it('a process that is done serves the next job', () => {
  const { begin, processes } = start();
  const first = begin();
  processes[0]!.send(done);
  first.solver.kill();
  const next = begin();
  processes[0]!.send(done);
  expect(processes).toHaveLength(1);
  expect(processes[0]!.killed()).toBe(false);
  expect([first.heard, next.heard]).toEqual([[done], [done]]);
});

it('one that is ended in the middle of its work is gone, as is one that failed', () => {
  const { begin, processes } = start();
  begin().solver.kill();
  expect(processes[0]!.killed()).toBe(true);
  const failing = begin();
  processes[1]!.send({ kind: 'failed', jobId: 'b', message: 'TypeError' });
  failing.solver.kill();
  expect(processes[1]!.killed()).toBe(true);
  begin();
  expect(processes).toHaveLength(3);
});

it('each of two jobs at a time has a process of its own', () => {
  const { begin, processes } = start();
  begin();
  begin();
  expect(processes).toHaveLength(2);
});

it('one that nobody needs for a while is ended, as is one that died idle', () => {
  const { begin, processes } = start();
  const serve = (): void => {
    const { solver } = begin();
    processes.at(-1)!.send(done);
    solver.kill();
  };
  serve();
  vi.advanceTimersByTime(59_000);
  expect(processes[0]!.killed()).toBe(false);
  vi.advanceTimersByTime(2000);
  expect(processes[0]!.killed()).toBe(true);
  serve();
  processes[1]!.exit();
  serve();
  expect(processes).toHaveLength(3);
});
