// @vitest-environment jsdom
import { fireEvent, render, screen } from '@testing-library/react';
import { expect, it, vi } from 'vitest';
import { TroubleBoundary } from '../../../renderer/ui/trouble-boundary.tsx';

it('says what stopped instead of showing nothing, and opens it again', () => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
  let broken = true;
  const Screen = () => {
    if (broken) throw new Error('no such gauge');
    return <p>The board</p>;
  };
  render(
    <TroubleBoundary what="This screen">
      <Screen />
    </TroubleBoundary>,
  );
  expect(screen.getByRole('alert').textContent).toContain(
    'This screen stopped by a mistake in the app (no such gauge)',
  );
  broken = false;
  fireEvent.click(screen.getByRole('button', { name: 'Open it again' }));
  expect(screen.getByText('The board')).toBeDefined();
});
