import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrast, inkOn, luminance } from '../../../renderer/gantt/contrast.ts';

const channel = fc.integer({ min: 0, max: 255 }).map((n) => n.toString(16).padStart(2, '0'));
const hex = fc.tuple(channel, channel, channel).map((c) => `#${c.join('')}`);
const inks = { black: '#000000', white: '#ffffff' };

describe('words on sheet colours', () => {
  // WCAG 2.2: black on white is 21 : 1; success criterion 1.4.3 asks for 4.5 : 1.
  it('measures contrast as the web guidelines do', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21);
    expect(luminance('#ffffff')).toBeCloseTo(1);
    // #767676 on white: 4.54 : 1, the usual example of the darkest passing grey (value from memory).
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  it('are at least 4.5 : 1 on any colour', () => {
    fc.assert(
      fc.property(hex, (sheet) => {
        expect(contrast(sheet, inks[inkOn(sheet)])).toBeGreaterThanOrEqual(4.5);
      }),
      { numRuns: 5000 },
    );
  });
});
