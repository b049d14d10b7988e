// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Answers } from '../../../core/import/answers.ts';
import { readFile } from '../../../core/import/read-file.ts';
import { importKinds } from '../../../core/import/kinds.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { makeClient } from '../../../renderer/queries/client.ts';
import { importOf } from '../../../renderer/screens/import/file-import.ts';
import { ImportScreen } from '../../../renderer/screens/import/import-screen.tsx';
import { gridOf, nothingPast } from '../../core/import/order-table.ts';
import { aShop, NOW } from '../../support/builders.ts';
import { stubSizes } from '../board/memory-host.tsx';

/** A host that reads and takes files by the engine, cells parted by tabs, and counts how often it was asked. */
let shop: Shop;
let asked: { name: string; answers: Answers }[];

function answer(name: string, input: never): unknown {
  if (name === 'app.status')
    return {
      host: 'desktop',
      version: '0',
      dataFile: '',
      fresh: false,
      now: NOW,
      fixedClock: true,
      notice: null,
    };
  if (name === 'shop.read') return { epoch: 'test', revision: 1, shop };
  const { fileName, base64, answers } = input as { fileName: string; base64: string; answers: Answers };
  asked.push({ name, answers });
  const lines = Buffer.from(base64, 'base64').toString().split('\n');
  const read = () =>
    readFile(importKinds.orders, {
      shop,
      fileName,
      grid: gridOf(lines.map((line) => line.split('\t'))),
      answers,
      now: NOW,
      past: nothingPast,
    });
  const { reading, command } = read();
  if (name === 'import.read') return reading;
  const edit = command && applyCommand(shop, command);
  if (edit?.ok) shop = withChanges(shop, edit.value.changes);
  const { counts } = reading;
  return { stepId: 1, factId: null, label: '', counts, rush: [], left: read().reading };
}

const HEADER = 'Auftrag\tKunde\tTeil\tMenge\tMetall\tDicke\tFarbe\tLänge (mm)\tTermin';
const row = (order: string, quantity: string, colour: string, length: string, due = '2026-12-10') =>
  [order, 'Sheds', 'corner', quantity, 'galv', '24', colour, length, due].join('\t');

async function open(...rows: string[]): Promise<void> {
  render(
    <QueryClientProvider client={makeClient()}>
      <ImportScreen />
    </QueryClientProvider>,
  );
  const paste = await screen.findByRole('textbox', { name: 'Or paste rows here, the headings first' });
  fireEvent.change(paste, { target: { value: [HEADER, ...rows].join('\n') } });
  fireEvent.click(screen.getByRole('button', { name: 'Read these rows' }));
  await screen.findByRole('heading', { name: 'Pasted rows.txt' });
}
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const gridRow = (name: RegExp) => within(screen.getByRole('grid')).getByRole('row', { name });

beforeEach(() => {
  shop = aShop();
  asked = [];
  window.location.hash = '#/import/orders';
  stubSizes(1200, 800);
  vi.stubGlobal('CSS', { escape: (text: string) => text });
  const call = (name: string, input: unknown) =>
    Promise.resolve({ ok: true, value: answer(name, input as never) });
  Object.assign(window, { bridge: { onPush: () => () => undefined, call } });
});
afterEach(() => {
  cleanup();
  importOf('orders').getState().forget();
});

it('a question is answered by one press for the whole column, and the keyboard goes on to what is next', async () => {
  await open(row('2001', '40', 'moss', '2.500'), row('2002', '12', 'moss', '2.400'));
  expect(screen.getByText('2 rows waiting for an answer')).toBeTruthy();
  const meant = screen.getByRole('button', { name: /^2500 mm/ });
  meant.focus();
  press(/^2500 mm/);
  expect(await screen.findByText('2 lines ready')).toBeTruthy();
  await waitFor(() =>
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Import 2 lines' })),
  );
});

it('what the shop does not know is offered with its nearest, once for all rows that say it', async () => {
  await open(row('2001', '40', 'Mosss', '2400'), row('2002', '12', 'MOSSS', '2400'));
  press(/^Moss/);
  expect(await screen.findByText('2 lines ready')).toBeTruthy();
  expect(screen.getByText(/You said 1 thing about this file/)).toBeTruthy();
  press(/Take back: “Mosss” is the colour moss/i);
  expect(await screen.findByText('2 rows waiting for an answer')).toBeTruthy();
});

it('a wrong cell is typed again in place; what was not taken stays on the screen', async () => {
  await open(row('2001', '-5', 'moss', '2400'), row('2002', '12', 'moss', '2400'));
  press('Import 1 line');
  expect(await screen.findByText('1 line already exists')).toBeTruthy();
  fireEvent.click(within(gridRow(/Wrong/)).getByText('-5'));
  const cell = screen.getByRole('textbox', { name: 'quantity, row 2' });
  fireEvent.change(cell, { target: { value: '50' } });
  fireEvent.keyDown(cell, { key: 'Enter' });
  expect(await screen.findByText('1 line ready')).toBeTruthy();
  press('Import 1 line');
  expect(await screen.findByRole('heading', { name: 'All imported' })).toBeTruthy();
  expect(shop.line.find(({ orderId }) => orderId === '2001')?.quantity).toBe(50);
});

it('an entry that was given up asks nothing; the row can be left out by a key and brought back', async () => {
  await open(row('2001', '-5', 'moss', '2400'), row('2002', '12', 'moss', '2400'));
  const grid = screen.getByRole('grid', { name: 'Rows of the file' });
  fireEvent.click(within(gridRow(/Wrong/)).getByText('-5'));
  const before = asked.length;
  const cell = screen.getByRole('textbox', { name: 'quantity, row 2' });
  fireEvent.change(cell, { target: { value: '9' } });
  fireEvent.keyDown(cell, { key: 'Escape' });
  expect(asked.length).toBe(before);
  fireEvent.keyDown(grid, { key: 'Delete' });
  expect(await screen.findByText('1 row left out.')).toBeTruthy();
  press('Take back: 1 row left out.');
  expect(await screen.findByText('1 row to fix')).toBeTruthy();
});

it('a date that is past is taken when it is meant', async () => {
  await open(row('2001', '40', 'moss', '2400', '2026-11-02'));
  press('It is meant so');
  expect(await screen.findByText('1 line ready')).toBeTruthy();
});

it('what was said about a file is not lost when another is read before it is taken', async () => {
  await open(row('2001', '40', 'moss', '2.500'));
  press(/^2500 mm/);
  await screen.findByText('1 line ready');
  await importOf('orders')
    .getState()
    .read(new File([[HEADER, row('3', '1', 'moss', '9')].join('\n')], 'b.txt'));
  fireEvent.click(await screen.findByRole('button', { name: 'Back to Pasted rows.txt' }));
  expect(await screen.findByRole('heading', { name: 'Pasted rows.txt' })).toBeTruthy();
  expect(screen.getByText('1 line ready')).toBeTruthy();
});

it('a host that does not answer is said, and nothing said before is lost', async () => {
  await open(row('2001', '40', 'moss', '2.500'));
  const { bridge } = window as unknown as { bridge: { call: unknown } };
  const before = bridge.call;
  bridge.call = () =>
    Promise.resolve({ ok: false, error: { code: 'unavailable', message: 'It does not answer.' } });
  press(/^2500 mm/);
  expect((await screen.findByRole('alert')).textContent).toContain('It does not answer.');
  bridge.call = before;
  press('Read it again');
  expect(await screen.findByText('1 line ready')).toBeTruthy();
});
