// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';
import { makeClient } from '../../../renderer/queries/client.ts';
import { FloorScreen } from '../../../renderer/screens/floor/floor-screen.tsx';
import { hushToast, ToastCorner } from '../../../renderer/ui/toast.tsx';
import { stubSizes } from '../board/memory-host.tsx';
import { aLine, anOrder, aRecord, aShop, at } from '../../support/builders.ts';

const NOW = at('2026-11-30', '09:00');
const plain = aShop({ order: [anOrder()], line: [aLine()] });
const started = aShop({ ...plain, record: [aRecord({ good: 0, scrapped: 0, end: null })] });

/** The host: it holds a shop, carries out what it is asked, and keeps what was asked. */
let shop: Shop = plain;
let asked: Command[] = [];
let revision = 1;
/** What the host says against every report; empty: nothing. */
let refusal = '';
/** A host at a distance answers after the screen has drawn. */
let answersAfterMs = 0;

beforeEach(() => {
  asked = [];
  refusal = '';
  answersAfterMs = 0;
  localStorage.clear();
  stubSizes(1440, 900);
  window.location.hash = '#/floor/S1';
  // jsdom has no CSS object, which dialogs ask.
  vi.stubGlobal('CSS', { escape: (text: string) => text });
  Object.assign(window, {
    bridge: {
      onPush: () => () => undefined,
      call: async (name: string, input: unknown) => {
        if (name === 'edit.apply' && answersAfterMs > 0)
          await new Promise((resolve) => setTimeout(resolve, answersAfterMs));
        return name === 'edit.apply' && refusal
          ? { ok: false, error: { code: 'refused', message: refusal } }
          : { ok: true, value: answer(name, input) };
      },
    },
  });
});
afterEach(() => {
  hushToast();
  cleanup();
});

function answer(name: string, input: unknown): unknown {
  if (name === 'app.status')
    return { host: 'browser', fresh: false, now: NOW, fixedClock: true, notice: null };
  if (name === 'shop.read') return { epoch: 'test', revision, shop };
  if (name !== 'edit.apply') return { undo: [], redo: [] };
  const { command } = input as { command: Command };
  asked.push(command);
  const edit = applyCommand(shop, command);
  if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
  shop = withChanges(shop, edit.value.changes);
  return { ...edit.value, stepId: null, factId: (revision += 1), epoch: 'test', revision };
}

function draw(current: Shop) {
  shop = current;
  render(
    <QueryClientProvider client={makeClient()}>
      <FloorScreen />
      <ToastCorner />
    </QueryClientProvider>,
  );
}
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));

it('a changeover is kept as it begins, and timed until the operation is started', async () => {
  const state = { material: 'galv', gauge: '26', colour: 'moss' };
  draw({ ...plain, machine: plain.machine.map((m) => (m.id === 'S1' ? { ...m, state } : m)) });
  fireEvent.click(await screen.findByRole('button', { name: 'Start changeover' }));
  await waitFor(() => expect(shop.changeover).toMatchObject([{ operation: '1042/1:shear', since: NOW }]));
  cleanup();
  draw({ ...shop, changeover: [{ ...shop.changeover[0]!, since: instant(NOW - 420) }] });
  await screen.findByText(/Changing over since Mon 08:53/);
  press('Start');
  await waitFor(() => expect(shop.record[0]).toMatchObject({ start: NOW, changeoverSeconds: 420 }));
  expect(shop.changeover).toEqual([]);
});

it('a start that was not pressed in time is given afterwards, but not one still to come', async () => {
  draw(plain);
  await screen.findByRole('button', { name: 'Start' });
  fireEvent.keyDown(window, { key: 't' });
  const clock = await screen.findByLabelText('Time');
  const act = screen.getByRole('button', { name: 'Start from then' });
  fireEvent.change(clock, { target: { value: '09:01' } });
  expect(await screen.findByText(/still to come: it is Mon 09:00/)).toBeTruthy();
  expect(act).toHaveProperty('disabled', true);
  fireEvent.change(clock, { target: { value: '08:15' } });
  fireEvent.click(act);
  await waitFor(() =>
    expect(asked).toMatchObject([{ do: 'floor.start', at: at('2026-11-30', '08:15'), given: true }]),
  );
  expect(await screen.findByText(/since Mon 08:15/)).toBeTruthy();
});

it('an end is given afterwards, with the pieces that nobody counted, but not before the start', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  press('Ended earlier');
  const clock = await screen.findByLabelText('Time');
  fireEvent.change(clock, { target: { value: '06:50' } });
  expect(await screen.findByText(/recorded until Mon 30 Nov 07:00/)).toBeTruthy();
  fireEvent.change(clock, { target: { value: '08:20' } });
  press('Done at that time');
  fireEvent.click(await screen.findByRole('button', { name: 'They are good' }));
  await waitFor(() =>
    expect(asked).toEqual([
      {
        do: 'floor.done',
        operation: '1042/1:shear',
        at: at('2026-11-30', '08:20'),
        given: true,
        good: 20,
        scrapped: 0,
      },
    ]),
  );
});

it('each press is kept at once, as a difference', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  fireEvent.keyDown(window, { key: '+' });
  fireEvent.keyDown(window, { key: '+' });
  fireEvent.keyDown(window, { key: 'x' });
  const count = { do: 'floor.count', operation: '1042/1:shear', good: 1, scrapped: 0 };
  await waitFor(() => expect(asked).toEqual([count, count, { ...count, good: 0, scrapped: 1 }]), {
    timeout: 200,
  });
  await waitFor(() =>
    expect(screen.getByRole('textbox', { name: 'Good, of 20' })).toHaveProperty('value', '2'),
  );
});

it('pieces counted just before a pause are kept, and so are those counted while it lasts', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  fireEvent.keyDown(window, { key: '+' });
  press('Pause');
  fireEvent.click(await screen.findByRole('button', { name: 'End of shift' }));
  await screen.findByText(/Paused since/);
  expect(shop.record[0]).toMatchObject({ good: 1, scrapped: 0 });
  fireEvent.keyDown(window, { key: 'x' });
  press('Resume');
  await screen.findByText(/Under way/);
  expect(shop.record[0]).toMatchObject({ good: 1, scrapped: 1 });
  expect(asked.map((command) => command.do)).toEqual([
    'floor.count',
    'floor.pause',
    'floor.count',
    'floor.resume',
  ]);
});

it('pieces counted just before the screen is left are kept', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  fireEvent.keyDown(window, { key: '+' });
  cleanup();
  await waitFor(() => expect(shop.record[0]).toMatchObject({ good: 1 }));
});

it('what nobody counted is asked about before the operation is done', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  fireEvent.keyDown(window, { key: 'x' });
  fireEvent.keyDown(window, { key: 'x' });
  press('Done');
  expect(await screen.findByText('18 of 20 pieces are not counted')).toBeTruthy();
  press('They are good');
  await waitFor(() =>
    expect(asked.at(-1)).toEqual({
      do: 'floor.done',
      operation: '1042/1:shear',
      at: NOW,
      good: 18,
      scrapped: 0,
    }),
  );
  expect(await screen.findByText('remake of 1042/1')).toBeTruthy();
});

it('that an end was kept is said although its card has gone, with the way back', async () => {
  answersAfterMs = 50;
  draw(started);
  await screen.findByText(/Under way/);
  press('Done');
  press('They are good');
  expect(await screen.findByText(/^Kept: Finish 1042\/1 shearing: 20 good, 0 scrapped\./)).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Take back' })).toBeTruthy();
  expect(screen.queryByText(/Under way/)).toBeNull();
});

it('that an end was refused is said although its card has gone', async () => {
  answersAfterMs = 50;
  draw(started);
  await screen.findByText(/Under way/);
  refusal = 'Someone else has reported it. Nothing was changed; look again.';
  press('Done');
  press('They are good');
  expect(await screen.findByText(refusal)).toBeTruthy();
});

it('a pause needs a reason, of the list or in one’s own words', async () => {
  draw(started);
  await screen.findByText(/Under way/);
  press('Pause');
  const own = await screen.findByLabelText('Another reason');
  fireEvent.change(own, { target: { value: 'Crane is down' } });
  fireEvent.click(screen.getAllByRole('button', { name: 'Pause' }).at(-1)!);
  expect(await screen.findByText('Paused since Mon 09:00: Crane is down')).toBeTruthy();
  press('Resume');
  expect(await screen.findByText(/Under way/)).toBeTruthy();
});

it('bending cannot start before its blanks are there, and the cautions stay in sight', async () => {
  window.location.hash = '#/floor/B1';
  draw(plain);
  expect(await screen.findByText(/blanks of line 1042\/1 are not sheared yet/)).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Start' })).toHaveProperty('disabled', true);
  fireEvent.keyDown(window, { key: 's' });
  expect(asked).toEqual([]);
  expect(screen.getByRole('complementary', { name: 'Cautions' }).textContent).toMatch(/maker’s manual/);
});

it('work whose order was held after it began is suspended with one press', async () => {
  draw({ ...started, order: [anOrder({ status: 'held' })] });
  expect(await screen.findByText('1042/1 shearing is under way, but not in the plan')).toBeTruthy();
  press('Suspend');
  await waitFor(() => expect(shop.record[0]?.pauses).toMatchObject([{ suspended: true }]));
});

it('work whose order was cancelled is reported done with the pieces that were made', async () => {
  draw({
    ...started,
    order: [anOrder({ status: 'cancelled' })],
    record: [{ ...started.record[0]!, good: 7 }],
  });
  expect(await screen.findByText(/those pieces stay on record, and nothing more is made/)).toBeTruthy();
  press('Done');
  await waitFor(() => expect(shop.record[0]).toMatchObject({ good: 7, scrapped: 0, end: NOW }));
  expect(shop.line).toHaveLength(1);
});

it('without a machine it asks which one this screen is for, and remembers it', async () => {
  window.location.hash = '#/floor';
  draw(plain);
  fireEvent.click(await screen.findByRole('radio', { name: 'B1 Brake' }));
  expect(localStorage.getItem('foldweek.floor.machine')).toBe('B1');
  expect(window.location.hash).toBe('#/floor/B1');
});
