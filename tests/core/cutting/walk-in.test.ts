import { describe, expect, it } from 'vitest';
import { parseWalkIn, type WalkInWords } from '../../../core/cutting/walk-in.ts';

const words: WalkInWords = {
  units: 'in',
  gauges: ['24', '26', '.032'],
  colours: [
    { id: 'moss', name: 'Moss' },
    { id: 'C7', name: 'Barn red' },
  ],
};
const problem = (text: string): string => {
  const read = parseWalkIn(text, words);
  return read.ok ? 'read' : read.problems.map((p) => `${p.subject} ${p.field}: ${p.message}`).join(' ');
};

describe('a cut jotted down at the counter', () => {
  it.each([
    [
      '5 @ 9 1/2 in x 10 ft, 26 ga, moss',
      { quantity: 5, girthMm: 241.3, lengthMm: 3048, gauge: '26', colourId: 'moss' },
    ],
    [
      '12 pcs 6 x 120, barn red, gauge 24',
      { quantity: 12, girthMm: 152.4, lengthMm: 3048, gauge: '24', colourId: 'C7' },
    ],
    ['1 of 240 mm by 2,400 mm', { quantity: 1, girthMm: 240, lengthMm: 2400, gauge: null, colourId: null }],
    [
      `3 @ 4-1/4" × 10' 6", .032 gauge`,
      { quantity: 3, girthMm: 107.95, lengthMm: 3200.4, gauge: '.032', colourId: null },
    ],
  ])('%s', (text, expected) => {
    const read = parseWalkIn(text, words);
    expect(read.ok && read.value).toHaveLength(1);
    const [cut] = read.ok ? read.value : [];
    expect(cut).toMatchObject({
      ...expected,
      girthMm: expect.closeTo(expected.girthMm, 6),
      lengthMm: expect.closeTo(expected.lengthMm, 6),
    });
  });

  it('is one of several, a line each, empty lines skipped', () => {
    const read = parseWalkIn('2 @ 5 x 60\n\n3 @ 6 x 60, moss\n', words);
    expect(read.ok && read.value.map((cut) => cut.quantity)).toEqual([2, 3]);
  });

  it('is refused with the row and what could not be read', () => {
    expect(problem('nine and a half')).toMatch(/row 1 quantity/);
    expect(problem('2 @ 5 x 60\n0 @ 5 x 60')).toMatch(/row 2 quantity/);
    expect(problem('2 @ wide x 60')).toMatch(/row 1 girth: "wide" is not a length/);
    expect(problem('2 @ 5 x 60, 22 ga')).toMatch(/gauge "22" is not one of the shop's: 24, 26, .032/);
    expect(problem('2 @ 5 x 60, plaid')).toMatch(/"plaid" is neither a gauge nor a colour/);
    expect(problem('2 @ 0 x 60')).toMatch(/nought/);
  });
});
