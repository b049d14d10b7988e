// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { zonesWith } from '../../../renderer/screens/settings/time-zones.ts';
import { Combo } from '../../../renderer/ui/choice.tsx';

// The test's window has no CSS object, which the list of choices needs.
vi.stubGlobal('CSS', { escape: (text: string) => text.replace(/[^\w-]/g, '\\$&') });
afterEach(cleanup);

const european = zonesWith('UTC').filter(({ id }) => id === 'UTC' || id.startsWith('Europe/'));

describe('the time zone', () => {
  it('is chosen by typing its city and pressing Enter', () => {
    const onChange = vi.fn();
    render(<Combo label="Time zone" options={european} value="UTC" onChange={onChange} />);
    const field = screen.getByRole('combobox', { name: 'Time zone' });
    act(() => field.focus());
    fireEvent.change(field, { target: { value: 'Berlin' } });
    fireEvent.keyDown(field, { key: 'Enter' });
    expect(onChange).toHaveBeenLastCalledWith('Europe/Berlin');
  });

  it('is left as it is by Enter where the words leave several', () => {
    const onChange = vi.fn();
    render(<Combo label="Time zone" options={european} value="UTC" onChange={onChange} />);
    const field = screen.getByRole('combobox', { name: 'Time zone' });
    act(() => field.focus());
    fireEvent.change(field, { target: { value: 'Europe' } });
    fireEvent.keyDown(field, { key: 'Enter' });
    expect(onChange).not.toHaveBeenCalled();
  });

  it('can be one that the system has and does not list', () => {
    expect(zonesWith('UTC')[0]).toEqual({ id: 'UTC', name: 'UTC' });
    expect(zonesWith('Europe/Berlin')[0]?.id).not.toBe('Europe/Berlin');
  });
});
