// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, expect, it, vi } from 'vitest';
import { useDrafts } from '../../../renderer/form/drafts.ts';
import { Parts } from '../../../renderer/screens/shop/parts/parts.tsx';
import { aPart, aShop } from '../../support/builders.ts';
import { memoryHost } from '../board/memory-host.tsx';

// jsdom has no CSS.escape, which an opened list calls.
vi.stubGlobal('CSS', { escape: (text: string) => text });
afterEach(() => {
  cleanup();
  useDrafts.setState({ entries: {} });
});

const draw = () => {
  window.location.hash = '#/shop/parts/corner';
  const shop = aShop({ part: [aPart({ profile: { ...aPart().profile, flangesMm: [76.2, 101.6] } })] });
  const host = memoryHost(shop);
  render(<Parts shop={shop} />, { wrapper: host.Host });
  return host;
};
const text = () => screen.getByLabelText<HTMLTextAreaElement>('As text');
const flange = (number: number) =>
  screen.getByRole<HTMLInputElement>('textbox', { name: `Flange ${number}` });
const type = (value: string) => {
  fireEvent.change(text(), { target: { value } });
  fireEvent.blur(text());
};

it('the profile stands as text beside its fields, and follows them', () => {
  draw();
  expect(text().value).toBe('in: 3; 90 up; 4');
  fireEvent.change(flange(1), { target: { value: '3 1/2' } });
  expect(text().value).toBe('in: 3 1/2; 90 up; 4');
});

it('a text that is typed or pasted becomes the profile, lines and other units too', async () => {
  const host = draw();
  type('mm: hem 12 closed up\n115\n90 down\n50');
  expect(text().value).toBe('in: hem 12 mm closed up; 115 mm; 90 down; 50 mm');
  expect(flange(1).value).toBe('4.528 in');
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(host.shop().part[0]?.profile.flangesMm).toEqual([115, 50]));
});

it('a text that does not read stays as typed, is told, and no older shape is saved behind it', async () => {
  const host = draw();
  type('in: 3; 90 sideways; 4');
  expect(text().value).toBe('in: 3; 90 sideways; 4');
  expect(screen.getByText(/Step 2, “90 sideways”/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await new Promise((done) => setTimeout(done, 50));
  expect(host.shop().part[0]?.revision).toBe(0);
  type('in: 3; 90 up; 5');
  expect(flange(2).value).toBe('5 in');
});

it('an emptied text is the profile as it was', () => {
  draw();
  type('');
  expect(text().value).toBe('in: 3; 90 up; 4');
});

it('Enter takes the text; without one to take it is a key of the form', () => {
  const host = draw();
  const keys: string[] = [];
  document.addEventListener('keydown', ({ key }) => keys.push(key), { once: true });
  fireEvent.change(text(), { target: { value: '3; 90 up; 6' } });
  fireEvent.keyDown(text(), { key: 'Enter' });
  expect(text().value).toBe('in: 3; 90 up; 6');
  expect(keys).toEqual([]);
  fireEvent.keyDown(text(), { key: 'Enter', ctrlKey: true });
  expect(keys).toEqual(['Enter']);
  expect(host.shop().part[0]?.revision).toBe(0);
});
