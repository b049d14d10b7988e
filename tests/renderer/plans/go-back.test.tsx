// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeAll, expect, it, vi } from 'vitest';
import type { ListedPlan } from '../../../core/contract/plans.ts';
import { useShop } from '../../../renderer/queries/hooks.ts';
import { PlanList } from '../../../renderer/screens/plans/plan-list.tsx';
import { ToastCorner } from '../../../renderer/ui/toast.tsx';
import { aLine, anOrder, aShop, NOW } from '../../support/builders.ts';
import { aMove, madeFrom } from '../../support/edits.ts';
import { memoryHost, stubSizes } from '../board/memory-host.tsx';

beforeAll(() => stubSizes(1200, 500));
afterEach(cleanup);

const lines = ['1042', '1043', '1044'].map((orderId) => aLine({ orderId, partId: 'flat-strip' }));
const [A, B, C] = ['1042/1:shear', '1043/1:shear', '1044/1:shear'] as const;
const shop = aShop({
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: lines,
  queue: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
});
const calm: ListedPlan = {
  ...{ id: 7, name: 'Calm', what: 'named', at: NOW, by: 'desk 1', figures: null, undone: false },
};

function Plans({ onGone }: { onGone: () => void }) {
  const { data } = useShop();
  if (!data) return null;
  return (
    <PlanList
      plans={[calm]}
      timeZone={data.settings.timeZone}
      onCompare={() => {}}
      onMore={null}
      {...{ onGone }}
    />
  );
}

it('a plan is not gone back to over what someone did meanwhile, until asked again', async () => {
  const { Host, shop: now } = memoryHost(shop);
  const onGone = vi.fn();
  render(<Plans onGone={onGone} />, { wrapper: Host });
  render(<ToastCorner />);
  const { call } = window.bridge!;
  const other = madeFrom(shop, aMove(C, 'S1', 0));
  // The host's own way: the kept plan becomes a command with what this window saw.
  const others = [other];
  vi.spyOn(window.bridge!, 'call').mockImplementation(async (name, input, caller) => {
    if (name !== 'plans.goBack') return call(name, input, caller);
    for (const command of others.splice(0)) await call('edit.apply', { command }, 'elsewhere');
    const { seen } = input as { seen: Record<string, number> };
    const command = { do: 'plan.goBack', name: '“Calm”', queues: { S1: [B, A, C] }, pins: [], seen };
    return call('edit.apply', { command }, caller);
  });
  fireEvent.click(await screen.findByRole('button', { name: 'Go back to Calm' }));
  expect(await screen.findByText(/^The queue of Shear was changed meanwhile/)).toBeTruthy();
  const queue = () => now().queue.find(({ id }) => id === 'S1')?.operations;
  expect(queue()).toEqual([C, A, B]);
  expect(onGone).not.toHaveBeenCalled();
  fireEvent.click(screen.getByRole('button', { name: 'Do it again' }));
  await waitFor(() => expect(queue()).toEqual([B, A, C]));
  expect(onGone).toHaveBeenCalled();
});
