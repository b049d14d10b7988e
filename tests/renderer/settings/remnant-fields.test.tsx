// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { USUAL_REMNANTS } from '../../../core/planning/cut-run.ts';
import { settings as schema, type Settings } from '../../../core/shop/settings.ts';
import { inchesToMm } from '../../../core/units/length.ts';
import { fieldErrors } from '../../../renderer/form/field-errors.ts';
import type { Form } from '../../../renderer/form/use-form.ts';
import { RemnantFields } from '../../../renderer/screens/settings/remnant-fields.tsx';
import { someSettings } from '../../support/builders.ts';

afterEach(cleanup);

/** The fields of a form with these entries, and what is typed into them. */
function show(remnants: Settings['remnants']) {
  const entries = someSettings({ remnants });
  const set = vi.fn();
  const form = { entries, errors: fieldErrors(schema, entries), set } as unknown as Form<Settings>;
  render(<RemnantFields form={form} />);
  return set;
}
const field = (label: string) => screen.getByRole<HTMLInputElement>('textbox', { name: label });
const type = (label: string, text: string) => {
  fireEvent.change(field(label), { target: { value: text } });
  fireEvent.blur(field(label));
};

describe('the shop’s rule on remnants in Settings', () => {
  it('shows the usual one until the shop says its own, and changes one figure of it at a time', () => {
    const set = show(null);
    expect(
      ['At least wide', 'At least long', 'Of one size at most'].map((label) => field(label).value),
    ).toEqual(['6 in', '24 in', '10']);
    type('At least long', '36');
    expect(set).toHaveBeenLastCalledWith({ remnants: { ...USUAL_REMNANTS, lengthMm: inchesToMm(36) } });
    type('Of one size at most', '4');
    expect(set).toHaveBeenLastCalledWith({ remnants: { ...USUAL_REMNANTS, most: 4 } });
  });

  it('says beside each figure what is wrong with it', () => {
    show({ widthMm: NaN, lengthMm: -1, most: 2.5 });
    const told = screen.getAllByText(/^(Needs|Must|Is) /).map(({ textContent }) => textContent);
    expect(told).toHaveLength(3);
  });
});
