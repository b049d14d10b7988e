import { describe, expect, it } from 'vitest';
import { parseWalkIn } from '../../../core/shop/walk-in.ts';
import { aMaterial, aShop } from '../../support/builders.ts';

const shop = aShop();
const messages = (text: string, of = shop) => {
  const read = parseWalkIn(of, text);
  return read.ok ? [] : read.problems.map((p) => p.message);
};

describe('a cut in plain text', () => {
  it('says pieces, girth, length, gauge and colour', () => {
    const read = parseWalkIn(shop, '5 @ 9 1/2 in x 10 ft, 26 ga, moss');
    // 9 1/2 in × 25.4 = 241.3 mm; 10 ft × 304.8 = 3048 mm.
    expect(read).toMatchObject({
      ok: true,
      value: { pieces: 5, materialId: 'galv', gauge: '26', colourId: 'moss' },
    });
    if (!read.ok) throw new Error('refused');
    expect(read.value.girthMm).toBeCloseTo(241.3, 6);
    expect(read.value.lengthMm).toBeCloseTo(3048, 6);
  });

  it('takes a bare length in the shop’s units', () => {
    expect(parseWalkIn(shop, '2 of 6 x 96, moss green, 24')).toMatchObject({
      ok: true,
      value: { pieces: 2 },
    });
  });

  it('is told what was not understood', () => {
    expect(messages('some moss')).toEqual(['“some moss” does not say pieces, girth and length.']);
    expect(messages('5 @ wide x 10 ft, 26 ga, moss green')).toEqual(['"wide" is not a length.']);
    expect(messages('5 @ 9 in x 10 ft, 22 ga, moss green')).toContain('No gauge was understood.');
    expect(messages('5 @ 9 in x 10 ft, 26 ga, moss green, soon')).toEqual(['“soon” was not understood.']);
    expect(messages('0 @ 9 in x 10 ft, 26 ga, moss green')).toEqual(['0 pieces cannot be asked for.']);
  });

  it('asks for the material where two have the gauge', () => {
    const two = aShop({ material: [aMaterial(), aMaterial({ id: 'stainless', name: 'Stainless' })] });
    expect(messages('5 @ 9 in x 10 ft, 26 ga, moss green', two)).toEqual([
      'Gauge 26 is kept in more than one material.',
    ]);
    expect(parseWalkIn(two, '5 @ 9 in x 10 ft, 26 ga, moss green, stainless')).toMatchObject({
      ok: true,
      value: { materialId: 'stainless' },
    });
  });
});
