// @vitest-environment jsdom
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

/** The drafts as a window that was just opened finds them. */
async function openWindow() {
  vi.resetModules();
  const { useDrafts } = await import('../../../renderer/form/drafts.ts');
  return {
    get entries() {
      return useDrafts.getState().entries;
    },
    keep: (form: string, entries: unknown) => useDrafts.getState().keep(form, entries),
    drop: (form: string) => useDrafts.getState().drop(form),
  };
}

beforeEach(() => localStorage.clear());
afterEach(() => vi.restoreAllMocks());

const order = { order: { id: '4201', customer: 'Example Roofing', due: NaN }, lines: [{ quantity: NaN }] };

it('what was typed is there again after the window was closed, figures still to be typed too', async () => {
  (await openWindow()).keep('order +', order);
  expect((await openWindow()).entries).toEqual({ 'order +': order });
});

it('a draft that was saved or thrown away stays away', async () => {
  const window = await openWindow();
  window.keep('order +', order);
  window.keep('part z-bar', { name: 'Z' });
  window.drop('order +');
  expect(window.entries).toEqual({ 'part z-bar': { name: 'Z' } });
  expect((await openWindow()).entries).toEqual({ 'part z-bar': { name: 'Z' } });
});

it('what another tab keeps or throws away is seen here', async () => {
  const drafts = await openWindow();
  drafts.keep('order 4101', order);
  const storedAs = localStorage.key(0)!;
  const text = localStorage.getItem(storedAs)!;
  const told = (newValue: string | null) =>
    window.dispatchEvent(new StorageEvent('storage', { key: storedAs, newValue, storageArea: localStorage }));
  told(null);
  expect(drafts.entries).toEqual({});
  told(text);
  expect(drafts.entries).toEqual({ 'order 4101': order });
});

it('a damaged draft is passed over, the others are kept', async () => {
  (await openWindow()).keep('order +', order);
  localStorage.setItem(localStorage.key(0)!.replace('order +', 'order 7'), '{"order":');
  expect((await openWindow()).entries).toEqual({ 'order +': order });
});

it('where the window’s storage is full, a draft lasts while the window is open', async () => {
  const drafts = await openWindow();
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  drafts.keep('order +', order);
  expect(drafts.entries).toEqual({ 'order +': order });
});
