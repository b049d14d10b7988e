// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useBoardView } from '../../../renderer/gantt/view.ts';
import { BoardScreen } from '../../../renderer/screens/board/board-screen.tsx';
import { ToastCorner } from '../../../renderer/ui/toast.tsx';
import { anOrder, aShop, at } from '../../support/builders.ts';
import { aMove, madeFrom } from '../../support/edits.ts';
import { aBoardShop } from '../gantt/a-board.ts';
import { memoryHost, stubSizes } from './memory-host.tsx';

beforeAll(() => {
  stubSizes(1200, 500);
  Element.prototype.scrollIntoView = () => {};
});
beforeEach(() => useBoardView.setState({ selected: null, chosen: [], anchor: null, scale: null }));
afterEach(cleanup);

async function openBoard(shop: Shop) {
  const host = memoryHost(shop);
  render(<BoardScreen />, { wrapper: host.Host });
  await screen.findAllByRole('option');
  return host;
}
const press = (key: string, held: KeyboardEventInit = {}) =>
  fireEvent.keyDown(document.body, { key, ...held });
/** Another screen, or the floor, does something. */
const elsewhere = (command: Command) => window.bridge?.call('edit.apply', { command }, 'elsewhere');
/** What another desk sent just before this one's next command arrives at the host first. */
function justBefore(command: Command): void {
  const { call } = window.bridge!;
  const asked = vi.spyOn(window.bridge!, 'call').mockImplementation(async (...own) => {
    if (own[0] !== 'edit.apply') return call(...own);
    asked.mockRestore();
    await call('edit.apply', { command }, 'elsewhere');
    return call(...own);
  });
}
const moveLastFirst = aMove('1042/3:shear', 'S1', 0);
const pin = (shop: Shop, operation: string) =>
  madeFrom(shop, { do: 'operation.pin', operations: [operation] });
const queue = (shop: Shop, id: string) => shop.queue.find((one) => one.id === id)?.operations;
const status = () => screen.getByRole('status').textContent;

describe('the board', () => {
  it('waits with words, then shows a lane a machine with its queue', async () => {
    const { Host } = memoryHost(aBoardShop());
    render(<BoardScreen />, { wrapper: Host });
    expect(screen.getByRole('status').textContent).toBe('Working out the plan…');
    const lists = await screen.findAllByRole('listbox');
    expect(lists.map((list) => list.getAttribute('aria-label'))).toEqual([
      'Shear queue',
      'Brake queue',
      'Short brake queue',
    ]);
    expect(
      screen.getByRole('option', { name: '1042/2 bending, Corner, 20 pieces, 24 ga Moss green' }),
    ).toBeTruthy();
  });

  it('says what is missing when there are no machines, or no work orders', async () => {
    const none = memoryHost(aShop({ machine: [], line: [], order: [], downtime: [] }));
    render(<BoardScreen />, { wrapper: none.Host });
    expect(await screen.findByText('No machines yet')).toBeTruthy();
    cleanup();
    const idle = memoryHost(aShop({ line: [], order: [] }));
    render(<BoardScreen />, { wrapper: idle.Host });
    expect(await screen.findByText('No work orders yet')).toBeTruthy();
  });

  it('says why nothing can be planned', async () => {
    const shut = { ...aBoardShop().calendar[0]!, shifts: [], overtime: [] };
    const { Host } = memoryHost(aBoardShop({ calendar: [shut] }));
    render(<BoardScreen />, { wrapper: Host });
    expect((await screen.findByRole('alert')).textContent).toMatch(
      /has no open hours.*Add a shift or overtime/,
    );
  });

  it('shows the other lanes when one machine has no open hours, and says so in its lane', async () => {
    const board = aBoardShop();
    const shut = { ...board.calendar[0]!, id: 'none', name: 'Mothballed', shifts: [], overtime: [] };
    const machine = board.machine.map((m) => (m.id === 'B2' ? { ...m, calendarId: 'none' } : m));
    await openBoard({ ...board, machine, calendar: [...board.calendar, shut] });
    expect(screen.getByText(/Mothballed has no open hours.*Add a shift or overtime/)).toBeTruthy();
    expect(screen.getByText('◆ no open hours')).toBeTruthy();
    expect(screen.getByRole('option', { name: /^1042\/2 bending/ }).closest('[role=listbox]')).toBe(
      screen.getByRole('listbox', { name: 'Brake queue' }),
    );
  });

  it('lists late lines, and opens one at its last operation', async () => {
    await openBoard(aBoardShop({ order: [anOrder({ due: at('2026-11-27') })] }));
    expect(screen.getByRole('tab', { name: /Late/ }).textContent).toBe('Late3');
    fireEvent.click(screen.getByRole('rowheader', { name: /^1042\/2 ?due / }));
    expect(await screen.findByRole('heading', { name: '1042/2 bending' })).toBeTruthy();
  });
});

describe('moving on the board by keys', () => {
  it('moves the selected operation one place later and says what came of it', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    expect(useBoardView.getState().selected).toBe('1042/1:shear');
    press('ArrowRight');
    press('ArrowRight', { altKey: true });
    await waitFor(() =>
      expect(queue(host.shop(), 'S1')).toEqual(['1042/1:shear', '1042/3:shear', '1042/2:shear']),
    );
    expect(status()).toMatch(/^Moved 1042\/2 shearing to position 3 on Shear\. .*Changeover \+4 min\.$/);
  });

  it('moves a bend to the other brake', async () => {
    const host = await openBoard(aBoardShop());
    act(() => useBoardView.getState().select('1042/1:brake'));
    await screen.findByRole('heading', { name: '1042/1 bending' });
    press('ArrowDown', { altKey: true });
    await waitFor(() => expect(queue(host.shop(), 'B2')).toContain('1042/1:brake'));
  });

  it('moves a whole run by its key: one step, told in the panel and to who listens', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press('g');
    await screen.findByRole('heading', { name: '2 operations' });
    expect(screen.getAllByText(/^2 operations selected on Shear: .* of work\.$/)).toHaveLength(2);
    press('ArrowRight', { altKey: true, shiftKey: true });
    await waitFor(() =>
      expect(queue(host.shop(), 'S1')).toEqual(['1042/3:shear', '1042/1:shear', '1042/2:shear']),
    );
    expect(status()).toMatch(/^Moved 2 operations to position 2 on Shear\. /);
  });

  it('splits a run: from the operation on it goes behind the next run, where there is one', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press('ArrowRight');
    await screen.findByRole('heading', { name: '1042/2 shearing' });
    press('s');
    await waitFor(() =>
      expect(queue(host.shop(), 'S1')).toEqual(['1042/1:shear', '1042/3:shear', '1042/2:shear']),
    );
    press('s');
    await waitFor(() => expect(status()).toMatch(/^No run stands behind this one/));
  });

  it('pins what is selected with Ctrl and Shift, and Escape clears it', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press('ArrowRight', { shiftKey: true });
    press('ArrowDown', { ctrlKey: true });
    press(' ', { ctrlKey: true });
    await screen.findByRole('heading', { name: '3 operations' });
    press(' ');
    await waitFor(() => expect(host.shop().pin).toHaveLength(3));
    press('Escape');
    await screen.findByText('Late by');
    expect(screen.queryByText(/operations selected/)).toBeNull();
  });

  it('says why the other brake cannot take it, and moves nothing', async () => {
    const shop = aBoardShop();
    const long = { ...shop.line[0]!, lengthMm: 2900 };
    const host = await openBoard({ ...shop, line: [long, ...shop.line.slice(1)] });
    act(() => useBoardView.getState().select('1042/1:brake'));
    await screen.findByRole('heading', { name: '1042/1 bending' });
    press('ArrowDown', { altKey: true });
    await waitFor(() => expect(status()).toMatch(/^Short brake: .*longer than/));
    expect(queue(host.shop(), 'B1')).toContain('1042/1:brake');
  });

  it('pins with the space bar', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press(' ');
    await waitFor(() => expect(host.shop().pin.map((pin) => pin.id)).toEqual(['1042/1:shear']));
    expect(status()).toBe('1042/1 shearing is pinned: planning keeps it in its position.');
  });

  it('forgets what it said once that is undone', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press(' ');
    await waitFor(() => expect(host.shop().pin).toHaveLength(1));
    await window.bridge?.call('edit.undo', { stepId: null }, 'here');
    await waitFor(() => expect(status()).toMatch(/^Drag a bar/));
    expect(host.shop().pin).toHaveLength(0);
  });

  it('does not say it again when something else is done after the undo', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press(' ');
    await waitFor(() => expect(host.shop().pin).toHaveLength(1));
    await window.bridge?.call('edit.undo', { stepId: null }, 'here');
    await waitFor(() => expect(status()).toMatch(/^Drag a bar/));
    await elsewhere(pin(host.shop(), '1042/3:shear'));
    await waitFor(() =>
      expect(screen.getByRole('option', { name: /^1042\/3 shearing.*pinned/ })).toBeTruthy(),
    );
    expect(status()).toMatch(/^Drag a bar/);
  });

  it('says what someone else did to the queue first, and moves on what stands now when asked again', async () => {
    const host = await openBoard(aBoardShop());
    render(<ToastCorner />);
    justBefore(madeFrom(host.shop(), moveLastFirst));
    press('ArrowRight');
    press('ArrowRight', { altKey: true });
    expect(await screen.findByText(/^The queue of Shear was changed meanwhile/)).toBeTruthy();
    expect(queue(host.shop(), 'S1')?.slice(0, 2)).toEqual(['1042/3:shear', '1042/1:shear']);
    fireEvent.click(await screen.findByRole('button', { name: 'Do it again' }));
    await waitFor(() => expect(status()).toMatch(/^Moved 1042\/1 shearing to position 2 on Shear/));
    expect(queue(host.shop(), 'S1')?.[1]).toBe('1042/1:shear');
  });

  it('says it of a pin too, which keeps the position that stands now when asked again', async () => {
    const host = await openBoard(aBoardShop());
    render(<ToastCorner />);
    justBefore(madeFrom(host.shop(), moveLastFirst));
    press('ArrowRight');
    press(' ');
    expect(await screen.findByText(/^The queue of Shear was changed meanwhile/)).toBeTruthy();
    expect(host.shop().pin).toEqual([]);
    fireEvent.click(await screen.findByRole('button', { name: 'Do it again' }));
    await waitFor(() => expect(host.shop().pin.map(({ id }) => id)).toEqual(['1042/1:shear']));
    expect(queue(host.shop(), 'S1')?.slice(0, 2)).toEqual(['1042/3:shear', '1042/1:shear']);
  });

  it('forgets who a move makes late once something else is done', async () => {
    const host = await openBoard(aBoardShop());
    press('ArrowRight');
    press('ArrowRight', { altKey: true });
    await waitFor(() => expect(status()).toMatch(/^Moved 1042\/1 shearing/));
    await elsewhere(pin(host.shop(), '1042/3:shear'));
    await waitFor(() => expect(status()).toMatch(/^Drag a bar/));
  });

  it('forgets why a machine could not take it once the shop is changed', async () => {
    const shop = aBoardShop();
    const long = { ...shop.line[0]!, lengthMm: 2900 };
    const host = await openBoard({ ...shop, line: [long, ...shop.line.slice(1)] });
    act(() => useBoardView.getState().select('1042/1:brake'));
    await screen.findByRole('heading', { name: '1042/1 bending' });
    press('ArrowDown', { altKey: true });
    await waitFor(() => expect(status()).toMatch(/^Short brake: .*longer than/));
    await elsewhere(pin(host.shop(), '1042/3:shear'));
    await waitFor(() => expect(status()).toMatch(/^Drag a bar/));
  });
});

describe('dragging on the board', () => {
  const surface = () => screen.getByRole('application');
  const pointer = (type: 'pointerDown' | 'pointerMove' | 'pointerUp', clientX: number, clientY: number) =>
    fireEvent[type](surface(), { clientX, clientY, button: 0, pointerId: 1 });
  const middleOf = (name: RegExp) => {
    const bar = screen.getByRole('option', { name });
    const lane = Number(/translate\(0 (\d+)\)/.exec(bar.parentElement?.getAttribute('transform') ?? '')?.[1]);
    const value = (attribute: string) => Number(bar.getAttribute(attribute));
    return { x: value('x') + value('width') / 2, y: lane + value('y') + value('height') / 2 };
  };
  beforeAll(() => {
    Element.prototype.setPointerCapture = () => {};
  });

  it('shows what a drop would do, does nothing on Escape, and moves on letting go', async () => {
    const host = await openBoard(aBoardShop());
    const from = middleOf(/1042\/1 shearing/);
    const to = middleOf(/1042\/3 shearing/);
    pointer('pointerDown', from.x, from.y);
    pointer('pointerMove', to.x + 30, to.y);
    expect(status()).toMatch(/^1042\/1 shearing to position 3 on Shear\./);
    press('Escape');
    pointer('pointerUp', to.x + 30, to.y);
    expect(queue(host.shop(), 'S1')?.[0]).toBe('1042/1:shear');

    pointer('pointerDown', from.x, from.y);
    pointer('pointerMove', to.x + 30, to.y);
    pointer('pointerUp', to.x + 30, to.y);
    await waitFor(() => expect(queue(host.shop(), 'S1')?.at(-1)).toBe('1042/1:shear'));
    expect(status()).toMatch(/^Moved 1042\/1 shearing to position 3 on Shear\./);
  });

  it('selects on a plain click, and nothing on empty ground', async () => {
    await openBoard(aBoardShop());
    const on = middleOf(/1042\/2 shearing/);
    pointer('pointerDown', on.x, on.y);
    pointer('pointerUp', on.x, on.y);
    expect(useBoardView.getState().selected).toBe('1042/2:shear');
    pointer('pointerDown', 1190, on.y);
    pointer('pointerUp', 1190, on.y);
    expect(useBoardView.getState().selected).toBeNull();
  });
});
