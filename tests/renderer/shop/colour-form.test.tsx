// @vitest-environment jsdom
import { QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { makeClient } from '../../../renderer/queries/client.ts';
import { useDrafts } from '../../../renderer/form/drafts.ts';
import { Colours } from '../../../renderer/screens/shop/materials/colours.tsx';
import { aColour, aShop } from '../../support/builders.ts';

/** What the host was asked, and what it answers to `edit.apply`. */
let asked: unknown[] = [];
const done = {
  ok: true,
  value: { label: 'Change colour moss', stepId: 1, factId: null, epoch: 'test', revision: 2, changes: [] },
};
let answer: unknown = done;

beforeEach(() => {
  asked = [];
  answer = done;
  window.location.hash = '#/shop/colours/moss';
  Object.assign(window, {
    bridge: {
      onPush: () => () => undefined,
      call: (name: string, input: unknown) => {
        if (name !== 'edit.apply') return Promise.resolve({ ok: true, value: { undo: [], redo: [] } });
        asked.push(input);
        return Promise.resolve(answer);
      },
    },
  });
});
afterEach(() => {
  cleanup();
  useDrafts.setState({ entries: {} });
});

const draw = (shop = aShop()) =>
  render(
    <QueryClientProvider client={makeClient()}>
      <Colours shop={shop} />
    </QueryClientProvider>,
  );
const type = (label: string, text: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
const save = () => fireEvent.click(screen.getByRole('button', { name: 'Save' }));

it('a changed colour is saved with the revision that was read', async () => {
  draw(aShop({ colour: [aColour({ revision: 4 })] }));
  type('Name', 'Deep moss');
  save();
  await waitFor(() => expect(asked).toHaveLength(1));
  expect(asked[0]).toEqual({
    command: { do: 'row.save', kind: 'colour', row: { ...aColour(), name: 'Deep moss', revision: 4 } },
  });
  await waitFor(() => expect(useDrafts.getState().entries).toEqual({}));
});

it('a colour without a name is not sent, and the field says why', async () => {
  draw();
  type('Name', '');
  save();
  expect(await screen.findByText('Must not be empty.')).toBeTruthy();
  expect(asked).toEqual([]);
});

it('nothing typed is lost when the host refuses a save', async () => {
  answer = { ok: false, error: { code: 'conflict', message: 'The colour moss was changed meanwhile.' } };
  draw();
  type('Name', 'Deep moss');
  save();
  expect(await screen.findByText('The colour moss was changed meanwhile.')).toBeTruthy();
  expect(screen.getByLabelText<HTMLInputElement>('Name').value).toBe('Deep moss');
});

it('what was typed is still there after looking at another screen, until it is discarded', () => {
  const shop = aShop();
  const { unmount } = draw(shop);
  type('Name', 'Deep moss');
  unmount();
  draw(shop);
  expect(screen.getByLabelText<HTMLInputElement>('Name').value).toBe('Deep moss');
  fireEvent.click(screen.getByRole('button', { name: 'Discard changes' }));
  expect(screen.getByLabelText<HTMLInputElement>('Name').value).toBe('Moss green');
});

it('a new colour cannot take the code of another', async () => {
  window.location.hash = '#/shop/colours/+';
  draw();
  type('Code', 'moss');
  type('Name', 'Second moss');
  save();
  expect(await screen.findByText('The code moss already exists. Choose another.')).toBeTruthy();
  expect(asked).toEqual([]);
});
