import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeCode } from '../../core/code.ts';
import { code } from '../../core/fields.ts';

describe('a code made of a name', () => {
  it('is what people would write', () => {
    expect(freeCode('Dark grey', [])).toBe('dark-grey');
    expect(freeCode('alum-.032-moss-48x120', [])).toBe('alum-032-moss-48x120');
  });

  it('has a figure behind it where it is in use, whatever the letters', () => {
    expect(freeCode('White', ['WHITE', 'white-2'])).toBe('white-3');
  });

  it('fits the shop, and is free, for any name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.array(fc.string()), (name, taken) => {
        const made = freeCode(name, taken);
        const again = freeCode(name, [...taken, made]);
        return code.safeParse(made).success && code.safeParse(again).success && again !== made;
      }),
    );
  });
});
