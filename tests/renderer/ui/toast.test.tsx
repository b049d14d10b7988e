// @vitest-environment jsdom
import { act, render, screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { toast, toastError, ToastCorner } from '../../../renderer/ui/toast.tsx';

it('a trouble goes when something newer is said, so that it never stands beside its opposite', () => {
  render(<ToastCorner />);
  act(() => toastError(new Error('There is nothing to plan.')));
  expect(screen.getByText('There is nothing to plan.')).toBeTruthy();
  act(() => toast({ text: 'Add work order 1001: done.' }));
  expect(screen.queryByText('There is nothing to plan.')).toBeNull();
  expect(screen.getByText('Add work order 1001: done.')).toBeTruthy();
});
