// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { useDrafts } from '../../../renderer/form/drafts.ts';
import { useShop } from '../../../renderer/queries/hooks.ts';
import { OrderDialog } from '../../../renderer/screens/orders/order-dialog.tsx';
import { aLine, anOrder, aShop, NOW } from '../../support/builders.ts';
import { memoryHost } from '../board/memory-host.tsx';

vi.stubGlobal('CSS', { escape: (text: string) => text });
afterEach(() => {
  cleanup();
  useDrafts.setState({ entries: {} });
});

function Dialog() {
  const { data: shop } = useShop();
  return shop ? <OrderDialog shop={shop} orderId="1042" onClose={() => undefined} /> : null;
}
const pieces = () => within(screen.getByRole('group', { name: 'Line 1042/1' })).getByLabelText('Pieces');

const pressRemove = async () => {
  fireEvent.click(screen.getByRole('button', { name: 'Remove' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Remove work order' }));
};

/** The dialog with 24 pieces typed; meanwhile another desk has saved 18 of them. */
async function typedAndChanged(then: 'Save' | 'Remove' = 'Save') {
  const shop = aShop({ order: [anOrder()], line: [aLine()] });
  const host = memoryHost(shop);
  render(<Dialog />, { wrapper: host.Host });
  await screen.findByRole('dialog', { name: 'Work order 1042' });
  fireEvent.change(pieces(), { target: { value: '24' } });
  fireEvent.blur(pieces());
  const other = {
    do: 'order.save',
    order: shop.order[0],
    lines: [{ ...shop.line[0]!, quantity: 18 }],
    removed: [],
    at: NOW,
  };
  await window.bridge!.call('edit.apply', { command: other }, 'another desk');
  if (then === 'Save') fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  else await pressRemove();
  const note = await screen.findByRole('alert', { name: 'Changed meanwhile' });
  return { host, note };
}

it('a line that another desk has changed meanwhile is shown in both versions, and nothing is written over', async () => {
  const { host, note } = await typedAndChanged();
  expect(note.textContent).toMatch(/line 1042\/1/);
  expect(within(note).getByRole('row', { name: 'pieces 24 18' })).toBeTruthy();
  expect(host.shop().line[0]?.quantity).toBe(18);
  expect(pieces()).toHaveProperty('value', '24');
});

it('who goes on with their own saves it over the other one knowingly', async () => {
  const { host } = await typedAndChanged();
  fireEvent.click(screen.getByRole('button', { name: 'Go on with mine' }));
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(host.shop().line[0]?.quantity).toBe(24));
});

it('who takes the other one has it on the form', async () => {
  await typedAndChanged();
  fireEvent.click(screen.getByRole('button', { name: 'Discard mine' }));
  await waitFor(() => expect(pieces()).toHaveProperty('value', '18'));
  expect(screen.queryByRole('alert', { name: 'Changed meanwhile' })).toBeNull();
});

describe('an order that another desk has changed meanwhile', () => {
  it('is not removed, and both versions are shown', async () => {
    const { host, note } = await typedAndChanged('Remove');
    expect(within(note).getByRole('row', { name: 'pieces 24 18' })).toBeTruthy();
    expect(host.shop().order).toHaveLength(1);
  });

  it('is removed by who goes on after having seen them', async () => {
    const { host } = await typedAndChanged('Remove');
    fireEvent.click(await screen.findByRole('button', { name: 'Go on with mine' }));
    await pressRemove();
    await waitFor(() => expect(host.shop().order).toEqual([]));
  });
});
