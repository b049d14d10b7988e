import { describe, expect, it } from 'vitest';
import { profile as profileSchema } from '../../../core/part/profile.ts';
import {
  addFlange,
  addKick,
  mirrored,
  removeFlange,
  turnedOver,
  withFlange,
  withGap,
  withHem,
} from '../../../renderer/screens/shop/parts/profile-edit.ts';
import {
  addDimension,
  addSize,
  freshFamily,
  removeDimension,
  toggleFlange,
  withLength,
} from '../../../renderer/screens/shop/parts/family-edit.ts';
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

  it('keeps the gap of a hem from open to teardrop; a closed one has none', () => {
    const open = { kind: 'open', lengthMm: 12, direction: 'up', gapMm: 3 } as const;
    const hemmed = { ...profile, endHem: open };
    expect(withHem(hemmed, 'endHem', 'teardrop').endHem).toEqual({ ...open, kind: 'teardrop' });
    expect(withHem(hemmed, 'endHem', 'closed').endHem).not.toHaveProperty('gapMm');
    expect(withGap(open, null)).toEqual({ kind: 'open', lengthMm: 12, direction: 'up' });
    expect(profileSchema.safeParse(withHem(hemmed, 'endHem', 'closed')).success).toBe(true);
    expect(profileSchema.safeParse({ ...hemmed, endHem: { ...open, kind: 'closed' } }).success).toBe(false);
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

describe('a profile looked at from its other side', () => {
  const stepped = {
    ...profile,
    flangesMm: [10, 20, 30],
    bends: [
      { angle: 30, direction: 'up' as const, radiusMm: null },
      { angle: 60, direction: 'down' as const, radiusMm: null },
    ],
    endHem: { kind: 'closed' as const, lengthMm: 12, direction: 'up' as const },
  };

  it('is read from the other edge when it is mirrored, and is itself when mirrored again', () => {
    const other = mirrored(stepped);
    expect(other.flangesMm).toEqual([30, 20, 10]);
    expect(other.bends.map((b) => [b.angle, b.direction])).toEqual([
      [60, 'down'],
      [30, 'up'],
    ]);
    expect([other.startHem, other.endHem]).toEqual([stepped.endHem, null]);
    expect(mirrored(other)).toEqual(stepped);
  });

  it('has every fold and its paint the other way when it is turned over', () => {
    const other = turnedOver(stepped);
    expect(other.bends.map((b) => b.direction)).toEqual(['down', 'up']);
    expect([other.endHem?.direction, other.paintedSide]).toEqual(['down', 'down']);
    expect(turnedOver(other)).toEqual(stepped);
  });

  it('gets a kick of half an inch and 30° at its end', () => {
    const kicked = addKick(stepped);
    expect([kicked.flangesMm.at(-1), kicked.bends.at(-1)?.angle]).toEqual([12.7, 30]);
    expect(profileSchema.safeParse(kicked).success).toBe(true);
  });
});

describe('a family on its form', () => {
  const part = aPart({ profile: { ...profile, flangesMm: [50, 120] } });
  const fresh = freshFamily(part.profile);

  it('begins with the longest flange as its dimension, and a size with the pattern’s lengths', () => {
    expect(fresh.dimensions).toEqual([{ name: 'A', flanges: [2] }]);
    expect(addSize(part, fresh).sizes).toEqual([{ partId: 'corner-2', name: 'Corner 2', lengthsMm: [120] }]);
  });

  it('keeps one length a dimension in every size, and each flange in one dimension', () => {
    const two = addDimension(addSize(part, fresh));
    expect(two.sizes[0]?.lengthsMm).toEqual([120, NaN]);
    const moved = toggleFlange(two, 1, 2);
    expect(moved.dimensions.map((d) => d.flanges)).toEqual([[], [2]]);
    expect(toggleFlange(moved, 1, 2).dimensions[1]?.flanges).toEqual([]);
    expect(withLength(two, 0, 1, 70).sizes[0]?.lengthsMm).toEqual([120, 70]);
    expect(removeDimension(withLength(two, 0, 1, 70), 0).sizes[0]?.lengthsMm).toEqual([70]);
  });
});
