import { describe, expect, it } from 'vitest';
import { profile as profileSchema } from '../../../core/shop/part.ts';
import {
  addFlange,
  removeFlange,
  withFlange,
  withHem,
} from '../../../renderer/screens/shop/parts/profile-edit.ts';
import { partFigures } from '../../../renderer/screens/shop/parts/part-figures.ts';
import { aBrake, aMaterial, aPart, aShear, aShop } from '../../support/builders.ts';

const { profile } = aPart();
const material = aMaterial();
const gauge = material.gauges[0]!;

describe('a profile on its form', () => {
  it('keeps one bend between each two flanges whatever is added or removed', () => {
    let shape = profile;
    for (let i = 0; i < 4; i += 1) shape = withFlange(addFlange(shape), shape.flangesMm.length, 30);
    for (const at of [5, 0, 2]) {
      shape = removeFlange(shape, at);
      expect(profileSchema.safeParse(shape).success).toBe(true);
    }
    expect(shape.flangesMm).toEqual([100, 30, 30]);
  });

  it('keeps its last flange', () => {
    const flat = removeFlange(profile, 0);
    expect(removeFlange(flat, 0)).toBe(flat);
  });

  it('removes the bend before a flange, and the bend after the first one', () => {
    const three = {
      ...profile,
      flangesMm: [10, 20, 30],
      bends: [
        { ...profile.bends[0]!, angle: 30 },
        { ...profile.bends[0]!, angle: 60 },
      ],
    };
    expect(removeFlange(three, 2).bends.map(({ angle }) => angle)).toEqual([30]);
    expect(removeFlange(three, 1).bends.map(({ angle }) => angle)).toEqual([60]);
    expect(removeFlange(three, 0).bends.map(({ angle }) => angle)).toEqual([60]);
  });

  it('keeps a hem’s length when only its kind is changed', () => {
    const hemmed = { ...profile, endHem: { kind: 'closed', lengthMm: 12, direction: 'down' } as const };
    expect(withHem(hemmed, 'endHem', 'open').endHem).toEqual({
      kind: 'open',
      lengthMm: 12,
      direction: 'down',
    });
    expect(withHem(hemmed, 'endHem', null).endHem).toBeNull();
  });
});

describe('a part as it comes out', () => {
  it('has a blank as wide as the steps of its girth add up to', () => {
    const figures = partFigures(aShop(), aPart(), material, gauge);
    if (typeof figures === 'string') throw new Error(figures);
    expect(figures.steps.reduce((sum, step) => sum + step.addMm, 0)).toBeCloseTo(figures.blank.girthMm, 9);
    expect(figures.hits).toBe(1);
  });

  it('is checked on the shears and brakes that it passes; a flat one on the shears alone', () => {
    const names = (part: ReturnType<typeof aPart>) => {
      const figures = partFigures(aShop({ machine: [aBrake(), aShear()] }), part, material, gauge);
      return typeof figures === 'string' ? figures : figures.machines.map(({ machineName }) => machineName);
    };
    expect(names(aPart())).toEqual(['Shear', 'Brake']);
    expect(names(aPart({ profile: { ...profile, flangesMm: [150], bends: [] } }))).toEqual(['Shear']);
  });

  it('says what stops it on a machine that is too short', () => {
    const figures = partFigures(aShop(), aPart({ lengthMm: 4000 }), material, gauge);
    if (typeof figures === 'string') throw new Error(figures);
    for (const { findings } of figures.machines)
      expect(findings.filter((f) => f.severity === 'stop').map((f) => f.rule)).toContain('length');
  });

  it('waits in words until every length is given, and says when flanges are too short for their bends', () => {
    expect(partFigures(aShop(), aPart({ profile: addFlange(profile) }), material, gauge)).toMatch(
      /appear when every length/,
    );
    expect(
      partFigures(aShop(), aPart({ profile: { ...profile, flangesMm: [0.5, 100] } }), material, gauge),
    ).toMatch(/Flange 1/);
  });
});
