// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { FarChance } from '../../../renderer/ui/far-chance.tsx';

afterEach(cleanup);

it('a chance far from what the plan shows leads to what finished work says of the machine', () => {
  render(<FarChance share={0.1} late={false} machineId="B1" />);
  expect(screen.getByText(/past work overran these estimates/)).toBeTruthy();
  expect(screen.getByRole('link').getAttribute('href')).toBe('#/learning/B1');
});

it('one that agrees with the plan says nothing', () => {
  const { container } = render(<FarChance share={0.9} late={false} machineId="B1" />);
  expect(container.textContent).toBe('');
});
