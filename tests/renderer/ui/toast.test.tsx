// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { hushToast, toast, toastError, ToastCorner } from '../../../renderer/ui/toast.tsx';

const seen = (text: string): boolean => screen.queryByText(text) !== null;
const wait = (seconds: number): void => act(() => void vi.advanceTimersByTime(seconds * 1000));

/** jsdom measures nothing. */
class NoSizes implements ResizeObserver {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}

beforeEach(() => {
  vi.useFakeTimers();
  window.ResizeObserver = NoSizes;
  render(<ToastCorner />);
});
afterEach(() => {
  act(() => hushToast());
  cleanup();
  vi.useRealTimers();
});

it('what is said goes when something newer is said, so that it never stands beside its opposite', () => {
  act(() => toastError(new Error('There is nothing to plan.')));
  expect(seen('There is nothing to plan.')).toBe(true);
  act(() => toast({ text: 'Add work order 1001: done.' }));
  expect(seen('There is nothing to plan.')).toBe(false);
  expect(seen('Add work order 1001: done.')).toBe(true);
});

it('news and trouble both go by themselves, trouble later', () => {
  act(() => toast({ text: 'Add work order 1001: done.' }));
  wait(5);
  expect(seen('Add work order 1001: done.')).toBe(true);
  wait(2);
  expect(seen('Add work order 1001: done.')).toBe(false);
  act(() => toastError(new Error('There is nothing to plan.')));
  wait(15);
  expect(seen('There is nothing to plan.')).toBe(true);
  wait(6);
  expect(seen('There is nothing to plan.')).toBe(false);
});

it('it stays while the pointer is on it, and goes once the pointer is elsewhere', () => {
  act(() => toast({ text: 'Add work order 1001: done.' }));
  const region = screen.getByRole('region');
  fireEvent.pointerEnter(region, { pointerType: 'mouse' });
  wait(60);
  expect(seen('Add work order 1001: done.')).toBe(true);
  fireEvent.pointerLeave(region, { pointerType: 'mouse' });
  wait(7);
  expect(seen('Add work order 1001: done.')).toBe(false);
});

it('it stays while its button has the focus', () => {
  act(() => toast({ text: 'Add work order 1001: done.', action: { label: 'Undo', act: () => {} } }));
  act(() => screen.getByRole('button', { name: 'Undo' }).focus());
  wait(60);
  expect(seen('Add work order 1001: done.')).toBe(true);
  act(() => screen.getByRole('button', { name: 'Undo' }).blur());
  wait(7);
  expect(seen('Add work order 1001: done.')).toBe(false);
});

it('the board takes it away when its own line has something newer', () => {
  act(() => toast({ text: 'Undone: Move 4101/1.' }));
  act(() => hushToast());
  expect(seen('Undone: Move 4101/1.')).toBe(false);
});
