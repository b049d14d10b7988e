// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { makeClient } from '../../../renderer/queries/client.ts';
import { ArchiveScreen } from '../../../renderer/screens/orders/archive/archive-screen.tsx';
import { aLine, anOrder, aRecord, aShop, NOW } from '../../support/builders.ts';

/** Orders 100 to 102, a page each; what was searched for is kept. */
const old = [102, 101, 100].map((id) =>
  anOrder({ id: String(id), customer: `Customer of ${id}`, status: 'done', closedAt: NOW - id * 86_400 }),
);
let searched: string[] = [];

function answer(name: string, input: never): unknown {
  if (name === 'shop.read') return { epoch: 'test', revision: 1, shop: aShop() };
  if (name === 'archive.order')
    return {
      order: old[0],
      lines: [aLine({ orderId: '102', status: 'done' })],
      records: [aRecord({ id: '102/1:shear', good: 18, scrapped: 2, end: NOW })],
      reported: [{ id: 1, at: NOW, label: 'Finish 102/1 shearing', by: 'floor S1', reason: 'counted wrong' }],
    };
  const { text, before } = input as { text: string; before: { id: string } | null };
  searched.push(text);
  const found = old.filter(({ customer }) => customer.includes(text));
  const at = before ? found.findIndex(({ id }) => id === before.id) + 1 : 0;
  const [one] = found.slice(at, at + 1);
  return {
    orders: one ? [{ order: one, lines: 1, pieces: 20 }] : [],
    before: one && at + 1 < found.length ? { closedAt: one.closedAt, id: one.id } : null,
  };
}

beforeEach(() => {
  searched = [];
  window.location.hash = '#/orders/archive';
  vi.stubGlobal('CSS', { escape: (text: string) => text });
  const call = (name: string, input: unknown) =>
    Promise.resolve({ ok: true, value: answer(name, input as never) });
  Object.assign(window, { bridge: { onPush: () => () => undefined, call } });
  render(
    <QueryClientProvider client={makeClient()}>
      <ArchiveScreen />
    </QueryClientProvider>,
  );
});
afterEach(cleanup);

it('older orders come page by page, until there are none', async () => {
  expect(await screen.findByText('Customer of 102')).toBeTruthy();
  expect(screen.queryByText('Customer of 101')).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'Show older ones' }));
  expect(await screen.findByText('Customer of 101')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Show older ones' }));
  expect(await screen.findByText('Customer of 100')).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Show older ones' })).toBeNull();
});

it('what is typed is searched for, and nothing found is said', async () => {
  await screen.findByText('Customer of 102');
  const find = screen.getByRole('searchbox', { name: 'Find archived orders' });
  fireEvent.change(find, { target: { value: 'of 100 ' } });
  expect(await screen.findByText('Customer of 100')).toBeTruthy();
  expect(searched).toContain('of 100');
  fireEvent.change(find, { target: { value: 'gutters' } });
  expect(await screen.findByText('No archived order has “gutters” in it')).toBeTruthy();
});

it('an order opens with its lines and what was recorded, and nothing to change', async () => {
  fireEvent.click(await screen.findByRole('row', { name: /102/ }));
  const dialog = within(await screen.findByRole('dialog'));
  expect(await dialog.findByRole('row', { name: /^102\/1 Corner .* done$/ })).toBeTruthy();
  expect(dialog.getByRole('row', { name: /^102\/1 shearing S1 .* 18 2/ })).toBeTruthy();
  expect(dialog.getByText(/Nov 2026 .*counted wrong/)).toBeTruthy();
  expect(dialog.queryByRole('textbox')).toBeNull();
  expect(dialog.getAllByRole('button')).toHaveLength(1);
});
