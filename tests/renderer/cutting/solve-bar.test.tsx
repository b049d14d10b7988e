// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { act, cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { runKey } from '../../../core/cutting/run.ts';
import { cutRuns, type RunCut } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { ok } from '../../../core/result.ts';
import { makeClient, takePush } from '../../../renderer/queries/client.ts';
import { SolveBar } from '../../../renderer/screens/cutting/solve-bar.tsx';
import { aLine, anOrder, aQueue, aShop, NOW } from '../../support/builders.ts';

afterEach(cleanup);

const money = { currency: null, decimals: 'point' } as const;

/** A run of ten strips, dearer in work by so many cents than it was planned, and not proven. */
function runOf(dearer: number): RunCut {
  const line = aLine({ partId: 'flat-strip', quantity: 10 });
  const shop = aShop({ order: [anOrder()], line: [line], queue: [aQueue({ operations: ['1042/1:shear'] })] });
  const plan = viewPlan(shop, NOW);
  const [cut] = plan.ok ? cutRuns(shop, plan.value) : [];
  if (!cut?.plan.ok) throw new Error('not planned');
  const { value } = cut.plan;
  return { ...cut, plan: ok({ ...value, status: 'feasible', workCents: value.workCents + dearer }) };
}

it('“Keep searching” asks for more work on the run, and says what it has found', async () => {
  const asked: unknown[] = [];
  const call = (name: string, input: { seconds?: number; again?: boolean }) => {
    if (name === 'cuts.solve') asked.push([input.seconds, input.again]);
    const value = { state: null, improving: { phase: 'finished', left: 0 }, answers: [] };
    return Promise.resolve({ ok: true, value: name === 'cuts.read' ? value : { jobId: 'one' } });
  };
  Object.assign(window, { bridge: { onPush: () => () => undefined, call } });
  const client = makeClient();
  const bar = (cut: RunCut) => (
    <QueryClientProvider client={client}>
      <SolveBar cut={cut} money={money} />
    </QueryClientProvider>
  );
  const { rerender } = render(bar(runOf(2800)));
  // Opened, the run is worked on by itself; of that nothing is said.
  await waitFor(() => expect(asked).toEqual([[5, false]]));
  expect(screen.getByRole('status').textContent).toBe('');
  fireEvent.click(screen.getByRole('button', { name: 'Keep searching' }));
  await waitFor(() =>
    expect(asked).toEqual([
      [5, false],
      [20, true],
    ]),
  );
  // Before the work has begun nothing is said of what it found.
  expect(screen.getByRole('status').textContent).toBe('');
  const told = (phase: 'running' | 'finished') => {
    const job = { jobId: 'one', phase, seconds: 3, budgetSeconds: 20, message: null } as const;
    act(() => takePush(client, { kind: 'cut', state: { ...job, key: runKey(runOf(0).input), plan: null } }));
  };
  told('running');
  const status = (words: string) => waitFor(() => expect(screen.getByRole('status').textContent).toBe(words));
  await status('Searching for better sheets: 3 s. Nothing better yet.');
  rerender(bar(runOf(0)));
  await status('Searching for better sheets: 3 s. Found: 28.00 cheaper in all.');
  told('finished');
  await status('Found: 28.00 cheaper in all.');
});
