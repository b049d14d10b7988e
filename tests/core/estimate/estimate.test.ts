import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateBrake } from '../../../core/estimate/brake.ts';
import { defaultChangeover } from '../../../core/estimate/changeover.ts';
import { countCuts, estimateShear } from '../../../core/estimate/shear.ts';
import { standard, standardsOf } from '../../../core/estimate/standards.ts';
import type { Blank } from '../../../core/part/blank.ts';
import { changeoverRules } from '../../../core/shop/machine.ts';
import { stage, type Stage } from '../../../core/part/stage.ts';
import { inchesToMm } from '../../../core/units/length.ts';
import { aProfile, closedHem, square } from '../part/profiles.ts';

const aMachine = (of: Stage, standards: Record<string, number> = {}, crew = 1) => ({
  stage: of,
  standards,
  crew,
  dieOpeningMm: 8,
});
const aPart = (profile = aProfile()) => ({ profile, bendOrder: null });
const aBlank = (girthIn: number, lengthIn: number, kgPerM2 = 5.6): Blank => {
  const [girthMm, lengthMm] = [inchesToMm(girthIn), inchesToMm(lengthIn)];
  const areaM2 = (girthMm * lengthMm) / 1e6;
  return { girthMm, lengthMm, areaM2, weightKg: areaM2 * kgPerM2 };
};
const aSheet = (widthIn: number, lengthIn: number, trimIn = 0) => ({
  widthMm: inchesToMm(widthIn),
  lengthMm: inchesToMm(lengthIn),
  trimMm: inchesToMm(trimIn),
});

describe('the standards of a stage', () => {
  it.each(stage.options)(
    'of a %s have different keys, a default between low and high, and a source',
    (of) => {
      const all = standardsOf(of);
      expect(new Set(all.map((s) => s.key)).size).toBe(all.length);
      for (const s of all) {
        expect([s.key, s.low <= s.default && s.default <= s.high]).toEqual([s.key, true]);
        expect(s.source).not.toBe('');
      }
    },
  );

  it('give way to the machine’s own figure', () => {
    expect(standard(aMachine('shear'), 'sheetLoad')).toBe(45);
    expect(standard(aMachine('shear', { sheetLoad: 30 }), 'sheetLoad')).toBe(30);
    expect(() => standard(aMachine('shear'), 'flip')).toThrow(RangeError);
  });

  it.each(stage.options)('come with changeover rules for a new %s that the shop can store', (of) => {
    expect(changeoverRules.parse(defaultChangeover(of))).toEqual(defaultChangeover(of));
  });
});

describe('cuts of one line', () => {
  const count = (blank: Blank, quantity: number, sheet: ReturnType<typeof aSheet>) => {
    const counted = countCuts({ blank, quantity, sheet, units: 'in' });
    return counted.ok ? counted.value : counted.issues.map((p) => p.message);
  };

  it('one strip is what remains when the sheet divides evenly: 4 strips of 12 in from 48 are 3 cuts', () => {
    expect(count(aBlank(12, 120), 4, aSheet(48, 120))).toEqual({
      perSheet: 4,
      sheets: 1,
      cuts: 3,
      backGaugeMoves: 1,
    });
  });

  it('each strip is a cut when a drop remains: 5 of 9.5 in from 48 are 5 cuts', () => {
    expect(count(aBlank(9.5, 120), 60, aSheet(48, 120))).toMatchObject({ perSheet: 5, sheets: 12, cuts: 60 });
  });

  it('trim costs a strip of 12 in from a sheet of 48, and a cut on one side and one end', () => {
    expect(count(aBlank(12, 119.75), 3, aSheet(48, 120, 0.25))).toEqual({
      perSheet: 3,
      sheets: 1,
      cuts: 2 + 3,
      backGaugeMoves: 2,
    });
    expect(count(aBlank(12, 120), 1, aSheet(48, 120, 0.25))).toEqual([
      'A blank of girth 12 in, length 120 in, does not fit along a sheet 119 3/4 in long, 120 in less trim.',
    ]);
  });

  it('a blank 1/64 in beyond its sheet is that sheet, as in cut lists; 1/32 in beyond it is refused', () => {
    const [hair, more] = [1 / 64, 1 / 32].map((by) => count(aBlank(48 + by, 120 + by), 1, aSheet(48, 120)));
    expect(hair).toEqual({ perSheet: 1, sheets: 1, cuts: 0, backGaugeMoves: 1 });
    expect(more).toHaveLength(2);
  });

  it('short blanks are crosscut to panels first: 40 in from 120 takes 2 crosscuts and 3 panels of 3 cuts', () => {
    expect(count(aBlank(12, 40), 12, aSheet(48, 120))).toEqual({
      perSheet: 12,
      sheets: 1,
      cuts: 11,
      backGaugeMoves: 2,
    });
  });

  it('the last sheet is cut only as far as pieces are needed', () => {
    // 5 pieces: one panel parted and cut into 4 (3 cuts), one more panel parted, one piece off it.
    expect(count(aBlank(12, 40), 5, aSheet(48, 120))).toMatchObject({ sheets: 1, cuts: 2 + 3 + 1 });
  });

  it('a blank that does not fit is refused with its size and the sheet’s', () => {
    expect(count(aBlank(50, 130), 1, aSheet(48, 120))).toEqual([
      'A blank of girth 50 in, length 130 in, does not fit across a sheet 48 in wide.',
      'A blank of girth 50 in, length 130 in, does not fit along a sheet 120 in long.',
    ]);
  });

  it('never cut fewer pieces than asked nor a sheet too many', () => {
    const sizes = fc.record({
      girth: fc.double({ min: 1, max: 48, noNaN: true }),
      length: fc.double({ min: 5, max: 120, noNaN: true }),
    });
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 500 }), ({ girth, length }, quantity) => {
        const counted = countCuts({
          blank: aBlank(girth, length),
          quantity,
          sheet: aSheet(48, 120),
          units: 'in' as const,
        });
        if (!counted.ok) throw new Error('every size drawn fits the sheet');
        const { perSheet, sheets, cuts } = counted.value;
        expect(perSheet * sheets).toBeGreaterThanOrEqual(quantity);
        expect(perSheet * (sheets - 1)).toBeLessThan(quantity);
        // A guillotine cut makes one piece more, so pieces on a sheet less one is the least.
        expect(cuts).toBeGreaterThanOrEqual(quantity - sheets);
      }),
    );
  });
});

describe('an estimate', () => {
  const shear = (changes: Partial<Parameters<typeof estimateShear>[0]> = {}) => {
    const work = {
      blank: aBlank(9.5, 120),
      quantity: 60,
      sheet: aSheet(48, 120),
      machine: aMachine('shear'),
      units: 'in' as const,
      ...changes,
    };
    const estimate = estimateShear(work);
    if (!estimate.ok) throw new Error(estimate.issues.map((p) => p.message).join());
    return estimate.value;
  };

  it('is whole seconds and the sum of its reasons', () => {
    const quantities = fc.integer({ min: 1, max: 2000 });
    fc.assert(
      fc.property(quantities, fc.double({ min: 0, max: 30, noNaN: true }), (quantity, own) => {
        const machine = aMachine('brake', { hitLong: own });
        const bent = estimateBrake({ part: aPart(), blank: aBlank(9.5, 120), quantity, machine });
        for (const { seconds, reasons } of [shear({ quantity }), bent]) {
          expect(Number.isSafeInteger(seconds)).toBe(true);
          expect(reasons.reduce((sum, r) => sum + r.seconds, 0)).toBe(seconds);
        }
      }),
    );
  });

  it('never shrinks when more pieces are asked for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 1, max: 50 }), (quantity, more) => {
        expect(shear({ quantity: quantity + more }).seconds).toBeGreaterThanOrEqual(
          shear({ quantity }).seconds,
        );
      }),
    );
  });

  it('asks for two people where a sheet or a piece is heavy, or the machine needs a crew of two', () => {
    // 48 × 120 in of 24 gauge galvanized is 21 kg, of aluminium about half.
    expect(shear().people).toBe(2);
    expect(shear({ blank: aBlank(9.5, 120, 2.8) }).people).toBe(1);
    const bend = (blank: Blank, crew: number) =>
      estimateBrake({ part: aPart(), blank, quantity: 1, machine: aMachine('brake', {}, crew) }).people;
    expect([bend(aBlank(9.5, 120), 1), bend(aBlank(9.5, 120), 2), bend(aBlank(44, 120), 1)]).toEqual([
      1, 2, 2,
    ]);
  });

  it('counts hits by length, flips and turns of a piece bent both ways', () => {
    const profile = aProfile({
      flangesMm: [40, 60, 40],
      bends: [square('up'), square('down')],
      endHem: closedHem(12),
    });
    const reasons = (lengthIn: number) =>
      estimateBrake({
        part: aPart(profile),
        blank: aBlank(6, lengthIn),
        quantity: 10,
        machine: aMachine('brake'),
      }).reasons;
    expect(reasons(24).find((r) => r.label === 'hit')?.each).toBe(12);
    expect(reasons(20).find((r) => r.label === 'hit')).toMatchObject({ count: 40, each: 8, seconds: 320 });
    expect(reasons(72).find((r) => r.label === 'hit')?.each).toBe(12);
    expect(reasons(120).find((r) => r.label === 'hit')?.each).toBe(16);
    // The Z is rolled over once, which brings its other edge to the gauge too: no turn end for end.
    expect(reasons(120).find((r) => r.label === 'turn over')).toMatchObject({ count: 10, seconds: 60 });
    expect(reasons(120).find((r) => r.label === 'turn end for end')).toBeUndefined();
  });

  it('passes on the refusal of a blank that does not fit', () => {
    const estimate = estimateShear({
      blank: aBlank(50, 120),
      quantity: 1,
      sheet: aSheet(48, 120),
      machine: aMachine('shear'),
      units: 'in' as const,
    });
    expect(estimate).toMatchObject({ ok: false, issues: [{ subject: 'blank', field: 'girth' }] });
  });
});
