import { describe, expect, it } from 'vitest';
import { checkPart } from '../../../core/limits/limits.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import { inchesToMm } from '../../../core/units/length.ts';
import { aBrake, asked, aShear, found } from './asked.ts';
import { aProfile, closedHem, square } from '../part/profiles.ts';
import { metric } from '../../support/writing.ts';

describe('any machine', () => {
  it('takes a usual piece of trim without a word', () => {
    expect(found(aProfile(), aBrake())).toEqual([]);
    expect(found(aProfile(), aShear())).toEqual([]);
  });

  it('stops what is longer than it takes, and not what just fits', () => {
    expect(found(aProfile(), aBrake(), asked({ lengthMm: 3101 }))).toEqual(['stop: length']);
    expect(found(aProfile(), aBrake(), asked({ lengthMm: 3100 }))).toEqual([]);
  });

  it('stops hard metal that its mild-steel rating does not cover', () => {
    const tenGauge = { label: '10', thicknessMm: inchesToMm(0.1345), kgPerM2: 27 };
    const stainless = {
      ...asked().material,
      name: 'Stainless 304',
      metal: 'stainless' as const,
      tensileMpa: 620,
    };
    const wide = aProfile({ flangesMm: [200, 200] });
    expect(found(wide, aShear(), asked({ gauge: tenGauge }))).toEqual([]);
    expect(found(wide, aShear(), asked({ gauge: tenGauge, material: stainless }))).toEqual([
      'stop: thickness',
    ]);
  });

  it('says so when a profile cannot be bent at all, on either machine', () => {
    const impossible = aProfile({ flangesMm: [60, 1] });
    expect(found(impossible, aShear())).toEqual(['stop: geometry']);
    expect(found(impossible, aBrake())).toEqual(['stop: geometry']);
  });

  it('lists stops before warnings, each a sentence with advice and source', () => {
    const thin = aProfile({ flangesMm: [15], bends: [] });
    const findings = checkPart(
      { id: 'P', name: 'Part', profile: thin, bendOrder: null },
      asked({ lengthMm: 3200 }),
      aShear(),
    );
    expect(findings.map((f) => f.severity)).toEqual(['stop', 'stop', 'warning']);
    for (const f of findings) {
      expect(f.message).toMatch(/\.$/);
      expect(f.advice).toMatch(/\.$/);
      expect(f.source).not.toBe('');
    }
  });
});

describe('a shear', () => {
  const strip = (girthMm: number) => aProfile({ flangesMm: [girthMm], bends: [] });

  it('stops a strip that its hold-downs cannot grip', () => {
    expect(found(strip(24.9), aShear(), asked({ lengthMm: 600 }))).toEqual(['stop: minimum strip']);
    expect(found(strip(25), aShear(), asked({ lengthMm: 600 }))).toEqual([]);
  });

  it('warns where the back gauge does not reach, near or far', () => {
    expect(found(strip(901), aShear())).toEqual(['warning: back-gauge reach']);
    expect(found(strip(60), aShear({ backGaugeMm: { min: 70, max: 900 } }))).toEqual([
      'warning: back-gauge reach',
    ]);
  });

  it('warns of twist in a long strip under two inches', () => {
    expect(found(strip(50), aShear())).toEqual(['warning: narrow strip']);
    expect(found(strip(50), aShear(), asked({ lengthMm: 1000 }))).toEqual([]);
  });
});

describe('a brake', () => {
  it('has nothing to say about a flat part', () => {
    expect(found(aProfile({ flangesMm: [100], bends: [] }), aBrake({ tonnes: 1 }))).toEqual([]);
  });

  it('stops a flange under 0.70 of the V, and under 1.10 of it past a square bend', () => {
    expect(found(aProfile({ flangesMm: [60, 4.4] }), aBrake())).toEqual(['stop: minimum flange']);
    expect(found(aProfile({ flangesMm: [60, 4.5] }), aBrake())).toEqual([]);
    const sharp = (lip: number) => aProfile({ flangesMm: [60, lip], bends: [square('up', 120)] });
    expect(found(sharp(6.9), aBrake())).toEqual(['stop: minimum flange']);
    expect(found(sharp(7), aBrake())).toEqual([]);
  });

  it('stops a hem lip too short for the V that folds it', () => {
    const hemmed = (lip: number) => aProfile({ endHem: { ...closedHem(lip), kind: 'open' } });
    expect(found(hemmed(6.9), aBrake())).toEqual(['stop: minimum flange']);
    expect(found(hemmed(7), aBrake())).toEqual([]);
  });

  it('warns of a typed radius that the V does not make, sharper or rounder', () => {
    const withRadius = (radiusMm: number) =>
      found(aProfile({ bends: [{ ...square(), radiusMm }] }), aBrake());
    // 16 % of 6.35 is 1.0 mm.
    expect([0.5, 0.51, 2, 2.1].map(withRadius)).toEqual([
      ['warning: radius made by the V'],
      [],
      [],
      ['warning: radius made by the V'],
    ]);
  });

  it('judges cracking by the radius that the V really makes, whatever the drawing asks for', () => {
    const alloy = { ...asked().material, name: '6061-T6', metal: 'aluminium', temper: '6061-T6' } as const;
    const gauge = { label: '1/16', thicknessMm: inchesToMm(1 / 16), kgPerM2: 4.3 };
    const want = asked({ material: alloy, gauge });
    const wide = aProfile({ flangesMm: [100, 100] });
    // 1 1/2 T are 2.4 mm; 15 % of 12.7 mm are 1.9, of 16 mm 2.4.
    expect(found(wide, aBrake({ dieOpeningMm: 12.7 }), want)).toEqual(['warning: minimum radius']);
    expect(found(wide, aBrake({ dieOpeningMm: 16 }), want)).toEqual([]);
    const drawn = aProfile({ flangesMm: [100, 100], bends: [{ ...square(), radiusMm: 3 }] });
    expect(found(drawn, aBrake({ dieOpeningMm: 12.7 }), want)).toEqual(['warning: minimum radius']);
    const [finding] = checkPart(
      { id: 'P', name: 'Part', profile: wide, bendOrder: null },
      want,
      aBrake({ dieOpeningMm: 12.7 }),
    );
    expect(finding?.advice).toContain('bent along the rolling direction, as long trim is');
  });

  it('asks two thicknesses of full-hard steel', () => {
    const hard = asked({ material: { ...asked().material, tensileMpa: 565 } });
    expect(found(aProfile(), aBrake(), hard)).toEqual(['warning: minimum radius']);
    expect(found(aProfile(), aBrake({ dieOpeningMm: 6.5 }), hard)).toEqual([]);
  });

  it('stops a bend beyond its force, and warns where charts disagree whether it is', () => {
    // 24 gauge, 10 ft, V 1/4 in: 17.5 US tons, 15.9 t.
    expect(found(aProfile(), aBrake({ tonnes: 15 }))).toEqual(['stop: bending force']);
    expect(found(aProfile(), aBrake({ tonnes: 17 }))).toEqual(['warning: bending force, margin']);
    expect(found(aProfile(), aBrake({ tonnes: 20 }))).toEqual([]);
  });

  it('is asked for far more force by a closed hem than by its bends, and for some by an open one', () => {
    // 24 gauge, 10 ft: 84 t closed, 32 t open.
    const closed = aProfile({ startHem: closedHem(12) });
    const open = aProfile({ startHem: { ...closedHem(12), kind: 'open' } });
    expect(found(closed, aBrake({ tonnes: 83 }))).toEqual(['stop: hem flattening force']);
    expect(found(closed, aBrake({ tonnes: 100 }))).toEqual(['warning: hem flattening force, margin']);
    expect(found(closed, aBrake({ tonnes: 101 }))).toEqual([]);
    expect(found(open, aBrake({ tonnes: 31 }))).toEqual(['stop: hem flattening force']);
    expect(found(open, aBrake({ tonnes: 38 }))).toEqual(['warning: hem flattening force, margin']);
    expect(found(open, aBrake({ tonnes: 39 }))).toEqual([]);
  });

  it('says where no printed table has the thickness of a hem', () => {
    const thin = asked({ gauge: { label: '30', thicknessMm: 0.4, kgPerM2: 3.2 } });
    const profile = aProfile({ startHem: closedHem(12) });
    const part = { id: 'P', name: 'Part', profile, bendOrder: null };
    const [finding] = checkPart(part, thin, aBrake({ tonnes: 40, dieOpeningMm: 5 }));
    expect(finding?.message).toBe(
      'Closing a hem needs about 46.7 metric tonnes over 120 in; Machine 1 has 40 metric tonnes. No printed table has this thickness: its nearest row is carried on.',
    );
  });

  it('stops a force that its bed does not stand over a short piece, and says what it is judged by', () => {
    const hemmed = aProfile({ startHem: closedHem(12) });
    const part = { id: 'P', name: 'Part', profile: hemmed, bendOrder: null };
    const short = asked({ lengthMm: 300, units: metric });
    const on = (machine: Partial<Machine>) => checkPart(part, short, aBrake(machine));
    const known = on({ tonnes: 40, betweenFramesMm: 3000 });
    expect(known.map(({ severity, rule }) => `${severity}: ${rule}`)).toEqual(['stop: concentrated load']);
    expect(known[0]?.message).toBe(
      'Closing a hem needs about 28 metric tonnes a metre; Machine 1 stands 22 metric tonnes a metre (the side frames are 3000 mm apart).',
    );
    const guessed = on({ tonnes: 40, betweenFramesMm: null });
    expect(guessed.map(({ severity, rule }) => `${severity}: ${rule}`)).toEqual([
      'warning: concentrated load, margin',
    ]);
    expect(guessed[0]?.message).toContain('is not on record, so its longest piece stands for it');
    expect(on({ tonnes: 70, betweenFramesMm: 3000 })).toEqual([]);
  });

  it('warns of a V under 6 or over 15 thicknesses', () => {
    const v = (times: number) => found(aProfile(), aBrake({ dieOpeningMm: times * 0.701 }));
    expect([5.9, 6, 15, 15.1].map(v)).toEqual([
      ['warning: V for the thickness'],
      [],
      [],
      ['warning: V for the thickness'],
    ]);
  });

  it('warns of a K-factor that metal cannot have', () => {
    const fitted = { ...asked().material, kFactor: 0.55 };
    expect(found(aProfile(), aBrake(), asked({ material: fitted }))).toEqual(['warning: K-factor']);
  });
});
