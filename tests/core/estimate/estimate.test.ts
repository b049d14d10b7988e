import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateBrake } from '../../../core/estimate/brake.ts';
import { defaultChangeover } from '../../../core/estimate/changeover.ts';
import { firstPieceSeconds } from '../../../core/estimate/first-piece.ts';
import { countCuts, estimateShear } from '../../../core/estimate/shear.ts';
import { standard, standardsOf } from '../../../core/estimate/standards.ts';
import type { Blank } from '../../../core/part/blank.ts';
import { changeoverRules } from '../../../core/shop/machine.ts';
import { stage, type Stage } from '../../../core/part/stage.ts';
import { inchesToMm } from '../../../core/units/length.ts';
import { aProfile, closedHem, square } from '../part/profiles.ts';
import { inches } from '../../support/writing.ts';

const aMachine = (of: Stage, standards: Record<string, number> = {}, crew = 1, timesEdition = 2) => ({
  stage: of,
  standards,
  crew,
  dieOpeningMm: 8,
  timesEdition,
});
const ofFirstEdition = (of: Stage, standards: Record<string, number> = {}) => aMachine(of, standards, 1, 1);
const aPart = (profile = aProfile()) => ({ profile, bendOrder: null });
/** 24 gauge galvanized, unless another metal is said. */
const aBlank = (girthIn: number, lengthIn: number, kgPerM2 = 5.6, thicknessMm = 0.7): Blank => {
  const [girthMm, lengthMm] = [inchesToMm(girthIn), inchesToMm(lengthIn)];
  const areaM2 = (girthMm * lengthMm) / 1e6;
  return { girthMm, lengthMm, areaM2, weightKg: areaM2 * kgPerM2, thicknessMm };
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
      const all = standardsOf(aMachine(of));
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
    const counted = countCuts({ blank, quantity, sheet, units: inches });
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
          units: inches,
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
      units: inches,
      ...changes,
    };
    const estimate = estimateShear(work);
    if (!estimate.ok) throw new Error(estimate.issues.map((p) => p.message).join());
    return estimate.value;
  };

  const bent = (changes: Partial<Parameters<typeof estimateBrake>[0]> = {}) =>
    estimateBrake({
      part: aPart(),
      blank: aBlank(9.5, 120),
      quantity: 60,
      machine: aMachine('brake'),
      ...changes,
    });

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

  it('asks for two people where a piece is heavy, large, or long and flimsy, or the machine needs a crew of two', () => {
    const bend = (blank: Blank, crew = 1) => {
      const machine = aMachine('brake', {}, crew);
      const { people, heavyBy } = estimateBrake({ part: aPart(), blank, quantity: 1, machine });
      return [people, ...heavyBy];
    };
    const [of24, of26] = [0.7, 0.55];
    expect(bend(aBlank(9.5, 120, 5.6, of24))).toEqual([1]);
    expect(bend(aBlank(9.5, 120, 5.6, of24), 2)).toEqual([2]);
    // Ten feet of 26 gauge hang through between two hands; eight do, seven do not.
    expect(bend(aBlank(9.5, 120, 4.4, of26))).toEqual([2, 'length']);
    expect(bend(aBlank(9.5, 96, 4.4, of26))).toEqual([2, 'length']);
    expect(bend(aBlank(9.5, 84, 4.4, of26))).toEqual([1]);
    // 24 × 120 in are 20 ft², 44 × 120 in of steel 19 kg.
    expect(bend(aBlank(24, 120, 2, of24))).toEqual([2, 'area']);
    expect(bend(aBlank(23.9, 120, 2, of24))).toEqual([1]);
    expect(bend(aBlank(44, 120, 5.6, of24))).toEqual([2, 'weight', 'area']);
  });

  it('asks for two at the shear by the sheet that is loaded, not by the blank', () => {
    expect(shear()).toMatchObject({ people: 2, heavyBy: ['weight', 'area'] });
    const small = { sheet: aSheet(20, 60), blank: aBlank(9.5, 60) };
    expect(shear(small)).toMatchObject({ people: 1, heavyBy: [] });
  });

  it('bundles beside the machine, unless the shop says that it waits', () => {
    const bundling = (machine: ReturnType<typeof aMachine>) => {
      const { reasons } = machine.stage === 'shear' ? shear({ machine }) : bent({ machine });
      return reasons.find((r) => r.label === 'bundle and label')?.seconds ?? 0;
    };
    expect(bundling(aMachine('shear'))).toBe(0);
    expect(bundling(aMachine('brake', { bundleOnClock: 1 }))).toBe(90);
    expect(bundling(aMachine('shear', { bundle: 120, bundleOnClock: 0.5 }))).toBe(60);
    expect(bundling(ofFirstEdition('brake'))).toBe(300);
  });

  it('takes 12 s to turn a piece of ten feet end for end, 6 s one of six feet, and 6 s to turn either over', () => {
    // A hem on each edge, both closed on the same side: the second comes to the tools by a turn.
    const hem = closedHem(12);
    const profile = aProfile({ flangesMm: [100, 100], bends: [square('up')], startHem: hem, endHem: hem });
    const turned = (machine: ReturnType<typeof aMachine>, lengthIn: number) =>
      bent({ machine, blank: aBlank(6, lengthIn), part: aPart(profile) }).reasons.find(
        (r) => r.label === 'turn end for end',
      )?.each;
    expect(turned(aMachine('brake'), 72)).toBe(6);
    expect(turned(aMachine('brake'), 120)).toBe(12);
    expect(turned(ofFirstEdition('brake'), 120)).toBe(6);
    // A shop that timed its turns before they were told apart keeps its figure for both.
    expect(turned(ofFirstEdition('brake', { turn: 9 }), 120)).toBe(9);
  });

  it('counts a first piece with the changeover; in the first edition with every line', () => {
    const first = (machine: ReturnType<typeof aMachine>) =>
      bent({ machine }).reasons.find(({ label }) => label.startsWith('first piece'))?.seconds ?? 0;
    expect(first(aMachine('brake'))).toBe(0);
    expect(firstPieceSeconds(aMachine('brake'))).toBe(360);
    expect(first(ofFirstEdition('brake'))).toBe(360);
    expect(firstPieceSeconds(ofFirstEdition('brake'))).toBe(0);
    expect(firstPieceSeconds(aMachine('shear'))).toBe(0);
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
      units: inches,
    });
    expect(estimate).toMatchObject({ ok: false, issues: [{ subject: 'blank', field: 'girth' }] });
  });
});
