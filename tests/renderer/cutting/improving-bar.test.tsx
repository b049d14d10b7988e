// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { act, cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import type { Improving } from '../../../core/contract/cuts.ts';
import { makeClient, takePush } from '../../../renderer/queries/client.ts';
import { ImprovingBar } from '../../../renderer/screens/cutting/improving-bar.tsx';
import { IdleCutting } from '../../../renderer/screens/settings/idle-cutting.tsx';

afterEach(cleanup);

/** The bar and the switch in Settings, as the host tells of its work; what the host was asked. */
async function draw(improving: Improving) {
  const asked: unknown[] = [];
  const call = (name: string, input: unknown) => {
    if (name === 'cuts.improve') asked.push(input);
    return Promise.resolve({
      ok: true,
      value: name === 'cuts.read' ? { state: null, improving, answers: [] } : {},
    });
  };
  Object.assign(window, { bridge: { onPush: () => () => undefined, call } });
  const client = makeClient();
  render(
    <QueryClientProvider client={client}>
      <ImprovingBar />
      <IdleCutting />
    </QueryClientProvider>,
  );
  await screen.findByRole('status');
  const told = (next: Improving) =>
    act(() => takePush(client, { kind: 'cutsFound', improving: next, answers: [] }));
  return { asked, told };
}

it('the work on all runs is told as it goes on, and goes when it is over', async () => {
  const { told } = await draw({ phase: 'running', left: 12 });
  expect(screen.getByText('Searching for better sheets for all runs: 12 runs left')).toBeTruthy();
  await told({ phase: 'running', left: 1 });
  expect(await screen.findByText(/all runs: 1 run left/)).toBeTruthy();
  await told({ phase: 'finished', left: 0 });
  await waitFor(() => expect(screen.queryByRole('status')).toBeNull());
});

it('it is stopped by a press, and wanted again by another', async () => {
  const { asked, told } = await draw({ phase: 'running', left: 3 });
  fireEvent.click(screen.getByRole('button', { name: 'Stop' }));
  await waitFor(() => expect(asked).toEqual([{ on: false }]));
  await told({ phase: 'stopped', left: 3 });
  fireEvent.click(await screen.findByRole('button', { name: 'Work on all runs' }));
  await waitFor(() => expect(asked).toEqual([{ on: false }, { on: true }]));
});

it('the switch in Settings is the same: off once it was stopped, and pressed it stops the work', async () => {
  const { asked, told } = await draw({ phase: 'running', left: 3 });
  const box = screen.getByRole<HTMLInputElement>('checkbox');
  expect(box.checked).toBe(true);
  fireEvent.click(box);
  await waitFor(() => expect(asked).toEqual([{ on: false }]));
  await told({ phase: 'stopped', left: 3 });
  await waitFor(() => expect(box.checked).toBe(false));
  await screen.findByRole('button', { name: 'Work on all runs' });
  fireEvent.click(box);
  await waitFor(() => expect(asked).toEqual([{ on: false }, { on: true }]));
});
