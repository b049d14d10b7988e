import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseWalkIn, walkInExample, walkInWords, type WalkInCut } from '../../../core/import/walk-in.ts';
import { aColour, aMaterial, aShop, someSettings } from '../../support/builders.ts';

const shop = aShop();
const messages = (text: string, of = shop) => {
  const read = parseWalkIn(of, text);
  return read.ok ? [] : read.issues.map((p) => p.message);
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

  it.each([
    '5 pcs, 9 1/2 in × 10 ft, 26 ga, moss',
    '5 pcs 9 1/2 in x 10 ft, 26 ga, moss',
    '5 pc., 9 1/2" X 120", 26ga, Moss green',
    '5@9.5×120,26,moss',
  ])('reads %s as the same cut', (text) => {
    expect(parseWalkIn(shop, text)).toEqual(parseWalkIn(shop, '5 @ 9 1/2 in x 10 ft, 26 ga, moss'));
  });

  it('is shown an example that it reads, in the units of the shop', () => {
    for (const units of ['in', 'mm'] as const) {
      const of = aShop({ settings: someSettings({ units }) });
      const read = parseWalkIn(of, walkInExample(units));
      if (!read.ok) throw new Error('refused');
      expect(walkInWords(of, read.value)).toBe(walkInExample(units).replace('moss', 'Moss green'));
    }
  });

  it('takes a bare length in the shop’s units', () => {
    expect(parseWalkIn(shop, '2 of 6 x 96, moss green, 24')).toMatchObject({
      ok: true,
      value: { pieces: 2 },
    });
  });

  it('takes decimals behind a comma, and refuses sizes that can be two', () => {
    const comma = aShop({ settings: someSettings({ units: 'mm', decimals: 'comma' }) });
    expect(parseWalkIn(comma, '5 pcs, 24,5 cm × 3,05 m, 26 ga, moss')).toMatchObject({
      value: { girthMm: 245, lengthMm: 3050 },
    });
    expect(parseWalkIn(shop, '5 pcs, 9,5 in × 10 ft, 26 ga, moss')).toEqual(
      parseWalkIn(shop, '5 pcs, 9.5 in × 10 ft, 26 ga, moss'),
    );
    expect(messages('5 pcs, 1,234 mm × 120 in, 26 ga, moss')).toEqual([
      '“1,234 mm” can be 1234 mm or 1.234 mm.',
    ]);
  });

  it('is told what was not understood', () => {
    expect(messages('some moss')).toEqual(['“some moss” does not say pieces, girth and length.']);
    expect(messages('5 @ wide x 10 ft, 26 ga, moss green')).toEqual(['“wide” is not a length.']);
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

describe('a cut written down', () => {
  const kept = {
    material: [aMaterial(), aMaterial({ id: 'stainless', name: 'Stainless, brushed' })],
    colour: [aColour(), aColour({ id: 'saga', name: 'Saga' }), aColour({ id: 'bone', name: 'Bone, matt' })],
  };
  /** Sixty-fourths of an inch, or hundredths of a millimetre, up to ten feet. */
  const size = fc.oneof(
    fc.integer({ min: 1, max: 120 * 64 }).map((parts) => (parts * 25.4) / 64),
    fc.integer({ min: 1, max: 304_800 }).map((hundredths) => hundredths / 100),
  );
  const cut: fc.Arbitrary<WalkInCut> = fc.record({
    pieces: fc.integer({ min: 1, max: 100_000 }),
    girthMm: size,
    lengthMm: size,
    materialId: fc.constantFrom('galv', 'stainless'),
    gauge: fc.constantFrom('24', '26'),
    colourId: fc.constantFrom('moss', 'saga', 'bone'),
  });

  it.each(['in', 'mm'] as const)('reads back as the very same cut, in a shop of %s', (units) => {
    const of = aShop({ ...kept, settings: someSettings({ units }) });
    fc.assert(
      fc.property(cut, (asked) => {
        const read = parseWalkIn(of, walkInWords(of, asked));
        if (!read.ok) throw new Error(read.issues[0]?.message);
        const { girthMm, lengthMm, ...rest } = read.value;
        // A sixty-fourth of an inch is not a whole hundredth of a millimetre: half of one is the most that is lost.
        expect(Math.abs(girthMm - asked.girthMm)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(Math.abs(lengthMm - asked.lengthMm)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(rest).toEqual({
          pieces: asked.pieces,
          materialId: asked.materialId,
          gauge: asked.gauge,
          colourId: asked.colourId,
        });
        expect(walkInWords(of, read.value)).toBe(walkInWords(of, asked));
      }),
      { numRuns: 500 },
    );
  });

  it('is written as people say it', () => {
    const read = parseWalkIn(shop, '5@9.5 x 120, 26ga, moss');
    if (!read.ok) throw new Error('refused');
    expect(walkInWords(shop, read.value)).toBe('5 pcs, 9 1/2 in × 10 ft, 26 ga, Moss green');
    const two = aShop(kept);
    expect(walkInWords(two, read.value)).toBe('5 pcs, 9 1/2 in × 10 ft, 26 ga, Moss green, Galvanized');
  });

  it('keeps the whole name of a colour that ends like a gauge', () => {
    const of = aShop(kept);
    expect(parseWalkIn(of, '2 @ 6 in x 8 ft, 24 ga, saga, galv')).toMatchObject({
      ok: true,
      value: { colourId: 'saga' },
    });
  });
});
