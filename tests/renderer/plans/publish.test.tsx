// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { followedShop } from '../../../core/planning/followed-plan.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { floorView } from '../../../core/report/floor.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { Changed } from '../../../renderer/screens/floor/changed.tsx';
import { PublishDialog } from '../../../renderer/screens/plans/publish-dialog.tsx';
import { aLine, anOrder, aShop, NOW, someSettings } from '../../support/builders.ts';
import { aMove, after } from '../../support/edits.ts';
import { memoryHost } from '../board/memory-host.tsx';

const lines = ['1042', '1043', '1044'].map((orderId) => aLine({ orderId, partId: 'flat-strip' }));
const [A, B, C] = ['1042/1:shear', '1043/1:shear', '1044/1:shear'] as const;
const byHand = aShop({
  settings: someSettings({ publishing: 'byHand' }),
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: lines,
  queue: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
  published: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
});
const moved = after(byHand, aMove(C, 'S1', 0));
const published = after(moved, { do: 'plan.publish', note: '' });

beforeEach(() => {
  localStorage.clear();
  // jsdom has no CSS object, which dialogs ask.
  vi.stubGlobal('CSS', { escape: (text: string) => text });
});
afterEach(cleanup);

it('publishing shows what changes for each machine first', async () => {
  const { Host, shop } = memoryHost(moved);
  const closed = vi.fn();
  render(<PublishDialog onClose={closed} />, { wrapper: Host });
  const changes = await screen.findByRole('region', { name: 'Changes on Shear' });
  expect(within(changes).getByRole('heading').textContent).toBe('Shear (S1): 1 change');
  expect(within(changes).getByRole('listitem').textContent).toBe('1044/1 earlier, now No. 1');
  expect(screen.queryByRole('region', { name: 'Changes on Brake' })).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'Publish' }));
  await waitFor(() => expect(shop().published.find(({ id }) => id === 'S1')?.operations).toEqual([C, A, B]));
  expect(closed).toHaveBeenCalled();
});

it('a floor screen tells what was published since someone looked, until it is seen', () => {
  const draw = (shop: Shop) => {
    const followed = followedShop(shop);
    const plan = viewPlan(followed, NOW);
    const view = plan.ok ? floorView(followed, plan.value, 'S1', NOW) : null;
    return <Changed shop={followed} view={view!} />;
  };
  const { rerender } = render(draw(byHand));
  expect(screen.queryByRole('region')).toBeNull();
  rerender(draw(moved));
  expect(screen.queryByRole('region')).toBeNull();
  rerender(draw(published));
  const told = screen.getByRole('region', { name: 'Changed in the plan' });
  expect(within(told).getByRole('listitem').textContent).toBe('1044/1 earlier, now No. 1');
  cleanup();
  render(draw(published));
  fireEvent.click(screen.getByRole('button', { name: 'Seen' }));
  expect(screen.queryByRole('region')).toBeNull();
});
