// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { useShop } from '../../../renderer/queries/hooks.ts';
import { SplitDialog } from '../../../renderer/screens/orders/split-dialog.tsx';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aRecord, aShop } from '../../support/builders.ts';
import { memoryHost } from '../board/memory-host.tsx';

vi.stubGlobal('CSS', { escape: (text: string) => text });
afterEach(cleanup);

const closed = vi.fn();
function Dialog() {
  const { data: shop } = useShop();
  return shop ? (
    <SplitDialog shop={shop} line={shop.line[0]!} order={shop.order[0]!} onClose={closed} />
  ) : null;
}

async function opened(record: Shop['record'] = []) {
  const host = memoryHost(
    aShop({ order: [anOrder()], line: [aLine({ quantity: 40 })], queue: [aQueue()], record }),
  );
  render(<Dialog />, { wrapper: host.Host });
  await screen.findByRole('dialog', { name: 'Split line 1042/1' });
  return host;
}
const type = (text: string) => {
  const field = screen.getByLabelText('Pieces for later');
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
};
const button = () => screen.getByRole('button', { name: 'Split the line' });

describe('the form that splits a line', () => {
  it('says what stays and what the new line is, and splits with one press', async () => {
    await opened([aRecord({ good: 12, scrapped: 0, end: null, quantity: 40 })]);
    expect(
      screen.getByText('12 of the 40 pieces are cut or on issued sheets: they stay with line 1042/1.'),
    ).toBeTruthy();
    type('15');
    expect(screen.getByText(/^Line 1042\/1 keeps 25; 15 become line 1042\/2, right behind it/)).toBeTruthy();
    fireEvent.click(button());
    await waitFor(() => expect(closed).toHaveBeenCalled());
  });

  it('takes no more pieces than are not cut yet', async () => {
    await opened([aRecord({ good: 12, scrapped: 0, end: null, quantity: 40 })]);
    type('29');
    expect(screen.getByText('Between 1 and 28.')).toBeTruthy();
    expect(button()).toHaveProperty('disabled', true);
  });

  it('says why a line whose shearing is done stays one', async () => {
    await opened([aRecord({ good: 40, scrapped: 0, quantity: 40 })]);
    expect(screen.getByText(/^Line 1042\/1 is sheared already, so it stays one line\./)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Split the line' })).toBeNull();
  });
});
