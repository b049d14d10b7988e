// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, expect, it, vi } from 'vitest';
import { useDrafts } from '../../../renderer/form/drafts.ts';
import { Sheets } from '../../../renderer/screens/shop/materials/sheets.tsx';
import { aSheet, aShop } from '../../support/builders.ts';
import { memoryHost } from '../board/memory-host.tsx';

// jsdom has no CSS.escape, which an opened list calls.
vi.stubGlobal('CSS', { escape: (text: string) => text });
afterEach(() => {
  cleanup();
  useDrafts.setState({ entries: {} });
});

const draw = () => {
  window.location.hash = '#/shop/sheets/galv-24-moss';
  const shop = aShop({ sheet: [aSheet()] });
  const host = memoryHost(shop);
  render(<Sheets shop={shop} />, { wrapper: host.Host });
  return host;
};
const choose = async (label: RegExp, option: string) => {
  fireEvent.click(screen.getByRole('button', { name: label }));
  fireEvent.click(await screen.findByRole('option', { name: option }));
};

it('the form of a stock and its trim can be changed; a coil speaks of stretches', async () => {
  const host = draw();
  await choose(/Form/, 'Coil, cut to length');
  expect(screen.getByLabelText('Cost of a coil length')).toBeTruthy();
  fireEvent.change(screen.getByLabelText('Coil length'), { target: { value: '1000 mm' } });
  fireEvent.change(screen.getByLabelText('Trim'), { target: { value: '1/4 in' } });
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() =>
    expect(host.shop().sheet[0]).toMatchObject({ form: 'coil', lengthMm: 1000, trimMm: 6.35, onHand: 40 }),
  );
});

it('what is on hand is not typed over: the form leads to the stock, where it gets an entry', () => {
  draw();
  expect(screen.queryByLabelText('Sheets on hand now')).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'Receive, set count, add or subtract' }));
  expect(window.location.hash).toBe('#/stock/galv-24-moss');
});

it('what removing a size does is read before it is done', async () => {
  const host = draw();
  fireEvent.click(await screen.findByRole('button', { name: 'Remove' }));
  const dialog = await screen.findByRole('dialog', { name: 'Remove sheet size galv-24-moss?' });
  expect(dialog.textContent).toMatch(
    /40 on hand are no longer counted as stock\..* can no longer be planned/,
  );
  expect(host.shop().sheet).toHaveLength(1);
});
