// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { DecimalMark } from '../../../core/units/number.ts';
import { Decimals } from '../../../renderer/ui/decimals.ts';
import { NumberField } from '../../../renderer/ui/number-field.tsx';

afterEach(cleanup);

type Props = Partial<Parameters<typeof NumberField>[0]>;

/** The field of a form that holds 4, what the form hears, and the input. */
function field(props: Props = {}, mark: DecimalMark = 'point') {
  const heard = vi.fn();
  function Form() {
    const [value, setValue] = useState(4);
    const take = (next: number) => {
      heard(next);
      setValue(next);
    };
    return (
      <>
        <NumberField label="Figure" value={value} onChange={take} {...props} />
        <button onClick={() => setValue(4)}>Discard</button>
      </>
    );
  }
  render(
    <Decimals value={mark}>
      <Form />
    </Decimals>,
  );
  const input = screen.getByLabelText<HTMLInputElement>('Figure');
  const type = (text: string) => {
    fireEvent.focus(input);
    fireEvent.change(input, { target: { value: text } });
    fireEvent.blur(input);
  };
  const press = (key: string) => fireEvent.keyDown(input, { key });
  return { heard, input, type, press };
}

describe('a number field', () => {
  it.each<[string, DecimalMark, number, string]>([
    ['0,6', 'point', 0.6, '0.6'],
    ['0,75', 'point', 0.75, '0.75'],
    ['0.6', 'comma', 0.6, '0,6'],
    ['2.500', 'point', 2.5, '2.5'],
    ['1.234,5', 'comma', 1234.5, '1234,5'],
    ["1'234.5", 'point', 1234.5, '1234.5'],
    ['−3', 'point', -3, '-3'],
  ])('takes “%s” in a shop that writes a %s as %d', (text, mark, value, shown) => {
    const { heard, input, type } = field({}, mark);
    type(text);
    expect(heard).toHaveBeenLastCalledWith(value);
    expect(input.value).toBe(shown);
  });

  it.each([
    ['1e3', '“1e3” is not a number. Write it like 2.5.'],
    ['1,234', '“1,234” can be 1234 or 1.234. Write 1234 or 1.234.'],
    ['12,34,567', '“12,34,567” is not a number. Write it like 2.5.'],
  ])('refuses “%s” in words, keeps it as typed, and never reports the value before', (text, words) => {
    const { heard, input, type } = field();
    type(text);
    expect(input.value).toBe(text);
    expect(screen.getByText(words)).toBeTruthy();
    expect(heard).toHaveBeenLastCalledWith(NaN);
  });

  it('of whole numbers refuses anything else', () => {
    const { input, type } = field({ whole: true });
    type('2,5');
    expect(screen.getByText('It must be a whole number, not 2,5. Write it like 40.')).toBeTruthy();
    expect(input.value).toBe('2,5');
    type('2,500');
    expect(input.value).toBe('2500');
  });

  it('says its limits, and never moves a figure to them', () => {
    const { input, type } = field({ min: 1, max: 10 });
    type('11');
    expect(screen.getByText('It must be at most 10, not 11.')).toBeTruthy();
    expect(input.value).toBe('11');
  });

  it('is stepped by the arrow keys, as far as its limits', () => {
    const { input, press } = field({ max: 5.5, step: 0.75 }, 'comma');
    press('ArrowUp');
    expect(input.value).toBe('4,75');
    press('ArrowUp');
    press('ArrowUp');
    expect(input.value).toBe('5,5');
    press('ArrowDown');
    expect(input.value).toBe('4,75');
  });

  it('leaves all other keys to the form and the page: Ctrl+Enter, Esc', () => {
    const heard: string[] = [];
    const hear = ({ key }: KeyboardEvent) => heard.push(key);
    document.addEventListener('keydown', hear);
    const { press } = field();
    for (const key of ['Enter', 'ArrowUp', 'Escape']) press(key);
    document.removeEventListener('keydown', hear);
    expect(heard).toEqual(['Enter', 'Escape']);
  });

  it('takes its own unit behind the figure', () => {
    const { heard, type } = field({ unit: 'kg' });
    type('3,5 kg');
    expect(heard).toHaveBeenLastCalledWith(3.5);
  });

  it('shows the form’s value again when that is put back', () => {
    const { input, type } = field();
    type('1e3');
    fireEvent.click(screen.getByText('Discard'));
    expect(input.value).toBe('4');
    expect(screen.queryByText(/is not a number/)).toBeNull();
  });

  it('is empty as NaN', () => {
    const { heard, input, type } = field();
    type('');
    expect(heard).toHaveBeenLastCalledWith(NaN);
    expect(input.value).toBe('');
  });
});
