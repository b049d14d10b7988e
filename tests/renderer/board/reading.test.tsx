// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Shop } from '../../../core/shop/state.ts';
import { barMenu } from '../../../renderer/screens/board/bar-menu.ts';
import { unfiltered, useBoardFilter } from '../../../renderer/screens/board/board-filter.ts';
import { BoardScreen } from '../../../renderer/screens/board/board-screen.tsx';
import { useBoardView } from '../../../renderer/gantt/view.ts';
import type { BoardDoing } from '../../../renderer/gantt/doing.ts';
import { aLine, anOrder } from '../../support/builders.ts';
import { aBoard, aBoardShop } from '../gantt/a-board.ts';
import { memoryHost, stubSizes } from './memory-host.tsx';

beforeAll(() => {
  stubSizes(1200, 500);
  Element.prototype.scrollIntoView = () => {};
});
beforeEach(() => {
  localStorage.clear();
  useBoardView.setState({ selected: null, chosen: [], scale: null, sought: null });
  useBoardFilter.setState({ filter: unfiltered });
});
afterEach(cleanup);

async function openBoard(shop: Shop) {
  const host = memoryHost(shop);
  render(<BoardScreen />, { wrapper: host.Host });
  await screen.findAllByRole('option');
  return host;
}
const press = (key: string) => fireEvent.keyDown(document.body, { key });
const option = (name: RegExp) => screen.getByRole('option', { name });

describe('reading the board', () => {
  it('lists held work orders with their reasons', async () => {
    const held = anOrder({
      id: '1050',
      status: 'held',
      note: 'Colour not approved',
      customer: 'Invented Barns',
    });
    const line = aLine({ id: '1050/1', orderId: '1050' });
    const shop = aBoardShop();
    await openBoard({ ...shop, order: [...shop.order, held], line: [...shop.line, line] });
    fireEvent.click(screen.getByRole('tab', { name: /^Held/ }));
    const list = screen.getByRole('list', { name: 'Held work orders' });
    expect(list.textContent).toContain('Colour not approved');
    expect(list.textContent).toContain('Invented Barns');
  });

  it('lists the lines whose metal is not there and goes to them', async () => {
    const shop = aBoardShop();
    await openBoard({ ...shop, sheet: shop.sheet.map((sheet) => ({ ...sheet, onHand: 0 })) });
    fireEvent.click(screen.getByRole('tab', { name: /^Metal/ }));
    fireEvent.click(screen.getByRole('button', { name: 'Show 1042/2 on the board' }));
    expect(option(/^1042\/2 shearing/).getAttribute('aria-selected')).toBe('true');
  });

  it('goes to a line that another screen asked for', async () => {
    await openBoard(aBoardShop());
    useBoardView.getState().seek('1042/3');
    await screen.findByRole('heading', { level: 2, name: /1042\/3/ });
    expect(useBoardView.getState()).toMatchObject({ selected: '1042/3:shear', sought: null });
  });

  it('goes to the search by "/", counts lines, and by Enter goes on among those that fit', async () => {
    await openBoard(aBoardShop());
    press('/');
    const field = screen.getByRole('searchbox', { name: 'Find on the board' });
    expect(document.activeElement).toBe(field);
    fireEvent.change(field, { target: { value: 'bone' } });
    expect(screen.getByRole('status', { name: 'Lines that fit' }).textContent).toBe('1 of 3 lines');
    fireEvent.keyDown(field, { key: 'Enter' });
    expect(useBoardView.getState().selected).toBe('1042/3:shear');
  });

  it('opens as near as it was looked at last', async () => {
    await openBoard(aBoardShop());
    press('+');
    const near = useBoardView.getState().scale!.perPixel;
    cleanup();
    useBoardView.setState({ scale: null });
    await openBoard(aBoardShop());
    expect(useBoardView.getState().scale!.perPixel).toBeCloseTo(near, 3);
  });
});

describe('the menu of a bar', () => {
  const { lanes } = aBoard();
  const done: string[] = [];
  const doing = new Proxy({} as BoardDoing, { get: (_, name) => () => done.push(String(name)) });
  const labels = (operation: string) => barMenu(lanes, doing, operation).map(({ label }) => label);

  it('has what can be done with it, and of a run what can be done with the run', () => {
    expect(labels('1042/1:shear')).toEqual([
      ...['Pin in its position', 'Earlier', 'Later', 'To the front of the queue'],
      ...['Postpone behind the day’s work', 'Select its run of 2', 'Split the run here'],
      ...['Why not sooner?', 'How it is cut', 'Open work order 1042'],
    ]);
    expect(labels('1042/2:brake')).not.toContain('How it is cut');
    expect(labels('gone')).toEqual([]);
  });

  it('acts by what keys and panel act by', () => {
    for (const { disabled, id, act } of barMenu(lanes, doing, '1042/2:shear'))
      if (!disabled && ['pin', 'later', 'postpone', 'split', 'why'].includes(id)) act();
    expect(done).toEqual(['togglePin', 'move', 'postpone', 'splitRun', 'explain']);
  });
});
