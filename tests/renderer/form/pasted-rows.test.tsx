// @vitest-environment jsdom
import { cleanup, render, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { usePastedRows } from '../../../renderer/form/pasted-rows.tsx';
import { importOf } from '../../../renderer/screens/import/file-import.ts';

function List({ list }: { list: string }) {
  usePastedRows(list);
  return <input aria-label="Find" />;
}

/** Paste a text on the page, or in a field. @returns whether the list took it */
function paste(text: string, on: EventTarget = document.body): boolean {
  const event = new Event('paste', { bubbles: true, cancelable: true });
  Object.assign(event, { clipboardData: { getData: () => text } });
  on.dispatchEvent(event);
  return event.defaultPrevented;
}

let sent: { kind: string; base64: string }[] = [];
beforeEach(() => {
  sent = [];
  const call = (_: string, input: never) => {
    sent.push(input);
    return Promise.resolve({ ok: true, value: { rows: [] } });
  };
  Object.assign(window, { bridge: { onPush: () => () => undefined, call } });
});
afterEach(() => {
  cleanup();
  importOf('orders').getState().forget();
  window.location.hash = '';
});

describe('rows pasted into a list', () => {
  it('are read as a file of its rows', async () => {
    render(<List list="orders" />);
    expect(paste('order\tpart\n1042\tcap')).toBe(true);
    expect(window.location.hash).toBe('#/import/orders');
    await waitFor(() => expect(sent).toHaveLength(1));
    expect(sent[0]?.kind).toBe('orders');
    expect(atob(sent[0]?.base64 ?? '')).toBe('order\tpart\n1042\tcap');
  });

  it('are left to a field that is typed in, and a word is no table', () => {
    const { getByLabelText } = render(<List list="orders" />);
    expect(paste('order\tpart', getByLabelText('Find'))).toBe(false);
    expect(paste('1042')).toBe(false);
    expect(paste('')).toBe(false);
    expect(sent).toEqual([]);
  });

  it('are not taken where no such file is read, nor after the list has gone', () => {
    const { unmount } = render(<List list="calendars" />);
    expect(paste('a\tb')).toBe(false);
    unmount();
    const orders = render(<List list="orders" />);
    orders.unmount();
    expect(paste('a\tb')).toBe(false);
  });
});
