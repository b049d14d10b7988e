// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { OrderLine } from '../../../core/shop/order.ts';
import { useDrafts } from '../../../renderer/form/drafts.ts';
import { useShop } from '../../../renderer/queries/hooks.ts';
import { orderDraft } from '../../../renderer/screens/orders/order-draft.ts';
import { OrderDialog } from '../../../renderer/screens/orders/order-dialog.tsx';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
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

async function opened(...lines: OrderLine[]) {
  const host = memoryHost(
    aShop({
      order: [anOrder({ importance: 2 }), anOrder({ id: '1043', customer: 'Northfield Sheds' })],
      line: lines,
    }),
  );
  render(<Dialog />, { wrapper: host.Host });
  await screen.findByRole('dialog', { name: 'Work order 1042' });
  const line = (n: number) => within(screen.getByRole('group', { name: `Line 1042/${n}` }));
  return { host, line };
}
const type = (field: HTMLElement, text: string) => {
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
};
const without = (row: object, ...fields: string[]): object =>
  Object.fromEntries(Object.entries(row).filter(([field]) => !fields.includes(field)));
const save = () => fireEvent.click(screen.getByRole('button', { name: 'Save' }));

describe('a line on the work order’s form', () => {
  it('has its own terms folded away while it has none, and open where it has', async () => {
    const { line } = await opened(
      aLine(),
      aLine({ number: 2, due: at('2026-12-02'), note: 'Film side out' }),
    );
    expect(line(1).getByText('More for this line')).toBeTruthy();
    expect(line(1).queryByLabelText('Line due')).toBeNull();
    expect(line(2).getByText('For this line: due Wed 2 Dec 17:00, a note')).toBeTruthy();
    expect(line(2).getByLabelText('Line due')).toHaveProperty('value', '2026-12-02');
    expect(line(2).getByLabelText('Line note')).toHaveProperty('value', 'Film side out');
  });

  it('saves what is typed there, and an emptied field is the order’s again', async () => {
    const { host, line } = await opened(aLine({ importance: 3, note: 'Film side out' }));
    type(line(1).getByLabelText('Line due'), '2026-12-01');
    type(line(1).getByLabelText('Line importance'), '');
    type(line(1).getByLabelText('Line note'), 'Ring first');
    save();
    await waitFor(() =>
      expect(host.shop().line[0]).toMatchObject({
        due: at('2026-12-01', '17:00'),
        importance: null,
        note: 'Ring first',
      }),
    );
  });

  it('is refused beside its field where it would start after it is due', async () => {
    const { host, line } = await opened(aLine({ note: 'x' }));
    type(line(1).getByLabelText('Line due'), '2026-12-01');
    type(line(1).getByLabelText('Line not before'), '2026-12-02');
    save();
    expect(
      line(1).getByText(/“Not before”, its own or its order’s, is not before the due date/),
    ).toBeTruthy();
    expect(host.shop().line[0]).toMatchObject({ due: null, release: null });
  });

  it('goes on with what was typed before lines had terms of their own', async () => {
    const line = without(aLine(), 'due', 'release', 'importance', 'note');
    const entry = without(line, 'id', 'orderId');
    const order = anOrder({ importance: 2 });
    useDrafts.setState({
      entries: {
        [orderDraft.nameOf('1042')]: { order, lines: [{ ...entry, quantity: 31 }], read: [line] },
      },
    });
    const { host } = await opened(aLine());
    save();
    await waitFor(() => expect(host.shop().line[0]).toMatchObject({ quantity: 31, due: null, note: '' }));
  });
});

describe('the customer of a work order', () => {
  it('is offered from what was written before, and chosen by key', async () => {
    const { host } = await opened(aLine());
    const field = screen.getByRole('combobox', { name: 'Customer' });
    expect(field).toHaveProperty('value', 'Invented Roofing');
    act(() => field.focus());
    fireEvent.change(field, { target: { value: 'north' } });
    // The names may come after the first key; they are offered with the next one.
    await waitFor(() => {
      fireEvent.change(field, { target: { value: 'nort' } });
      fireEvent.change(field, { target: { value: 'north' } });
      expect(screen.getByRole('option', { name: 'Northfield Sheds' })).toBeTruthy();
    });
    fireEvent.keyDown(field, { key: 'ArrowDown' });
    fireEvent.keyDown(field, { key: 'Enter' });
    save();
    await waitFor(() => expect(host.shop().order[0]?.customer).toBe('Northfield Sheds'));
  });

  it('keeps what is typed behind a name that was chosen, also when the list is put away', async () => {
    await opened(aLine());
    const field = screen.getByRole('combobox', { name: 'Customer' });
    act(() => field.focus());
    fireEvent.change(field, { target: { value: 'Northfield Sheds' } });
    fireEvent.change(field, { target: { value: 'Northfield Sheds Ltd' } });
    fireEvent.keyDown(field, { key: 'Escape' });
    expect(field).toHaveProperty('value', 'Northfield Sheds Ltd');
  });

  it('may be any other name', async () => {
    const { host } = await opened(aLine());
    const field = screen.getByRole('combobox', { name: 'Customer' });
    act(() => field.focus());
    type(field, 'Somebody New');
    save();
    await waitFor(() => expect(host.shop().order[0]?.customer).toBe('Somebody New'));
  });
});
