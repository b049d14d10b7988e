import { describe, expect, it } from 'vitest';
import { bendAllowance, kFactorFromTest, setback, type BendShape } from '../../core/part/bend.ts';
import { girth } from '../../core/part/girth.ts';
import { hemDeduction, hemShape } from '../../core/part/hem.ts';
import { airBendRadiusMm } from '../../core/part/radius.ts';
import type { Hem, Profile } from '../../core/part/profile.ts';
import { MPA_PER_KSI } from '../../core/units/force.ts';
import { inchesToMm, mmToInches } from '../../core/units/length.ts';
import { inches, metric } from '../support/writing.ts';

type Bend = Profile['bends'][number];
const turned = (angle: number, radiusMm: number | null = null): Bend => ({
  angle,
  direction: 'up',
  radiusMm,
});
const hem = (inches: number): Hem => ({ kind: 'closed', lengthMm: inchesToMm(inches), direction: 'up' });
const inInches = (
  flanges: number[],
  bends: Bend[],
  hems: [Hem | null, Hem | null] = [null, null],
): Profile => ({
  flangesMm: flanges.map(inchesToMm),
  bends,
  startHem: hems[0],
  endHem: hems[1],
  measured: 'apex',
  paintedSide: 'up',
});

function girthInches(profile: Profile, thickness: number, radius: number, kFactor: number): number {
  const width = girth(profile, {
    thicknessMm: inchesToMm(thickness),
    radiusMm: inchesToMm(radius),
    kFactor,
    rule: 'computed',
    units: inches,
  });
  if (!width.ok) throw new Error(width.issues.map((p) => p.message).join());
  return mmToInches(width.value.girthMm);
}

/** What one bend takes off the sum of two flanges measured to the apex, inches. */
const takenOff = ({ angle, radius, thickness, kFactor }: BendShape): number =>
  20 - girthInches(inInches([10, 10], [turned(angle)]), thickness, radius, kFactor);

describe('blanks worked out in print', () => {
  it('B1: legs .740, .420, 1.050 and 1.000 in, T .050, R .032, three square bends, make 2.973 in', () => {
    // Published: sheetmetalworkbook.com, bend deduction example; BA = (.0078 T + .01743 R) × 90, so K = .0078 × 180/π.
    // It rounds each deduction to .079, hence half a thousandth a bend and half for the sum.
    const k = (0.0078 * 180) / Math.PI;
    const profile = inInches([0.74, 0.42, 1.05, 1.0], [turned(90), turned(90), turned(90)]);
    expect(Math.abs(girthInches(profile, 0.05, 0.032, k) - 2.973)).toBeLessThanOrEqual(0.002);
  });

  // Published: a fabricator's bend-deduction chart, prototekmetals.com, cold-rolled steel, printed to .001 in.
  it.each([
    ['B2', 0.036, 0.03, 0.546, 0.054],
    ['B3', 0.036, 0.09, 0.4532, 0.085],
    ['B4', 0.048, 0.06, 0.4477, 0.088],
    ['B5', 0.048, 0.202, 0.4204, 0.151],
    ['B6', 0.06, 0.03, 0.4762, 0.088],
    ['B7', 0.06, 1.0, 0.416, 0.51],
  ])('%s: T %d, R %d, K %d, square, take off %d in', (_, thickness, radius, kFactor, deduction) => {
    const bend = { angle: 90, radius, thickness, kFactor };
    expect(Math.abs(takenOff(bend) - deduction)).toBeLessThanOrEqual(0.0005);
  });

  it('B8: 38 and 25 mm flats, T 3.2, R 4.75, 60°, K .33, make 69.08 mm with an allowance of 6.08', () => {
    // Handbook, from memory: Groover, Fundamentals of Modern Manufacturing, sheet-metal bending example.
    const bend = { angle: 60, radius: 4.75, thickness: 3.2, kFactor: 0.33 };
    expect(Math.abs(bendAllowance(bend) - 6.08)).toBeLessThanOrEqual(0.005);
    const back = setback('apex', bend);
    const profile: Profile = {
      ...inInches([], [turned(60, 4.75)]),
      flangesMm: [38 + back, 25 + back],
    };
    const width = girth(profile, { thicknessMm: 3.2, kFactor: 0.33, rule: 'computed', units: metric });
    expect(width.ok && Math.abs(width.value.girthMm - 69.08) <= 0.005).toBe(true);
  });
});

/** Worked by hand for this project with the handbook formula; no outside source. 24 ga galvanized, 1 mm radius. */
describe('blanks worked by hand', () => {
  const galv = { radius: 0.0394, thickness: 0.0276, kFactor: 0.446 };

  it.each([
    ['B9', 90, 0.0812, 0.134, 0.0528],
    ['B10, 45°', 45, 0.0406, 0.0555, 0.0149],
    ['B10, 30°', 30, 0.0271, 0.0359, 0.0088],
    ['B11', 135, 0.1218, 0.3235, 0.2017],
  ])('%s: allowance, twice the setback and deduction', (_, angle, allowance, setbacks, deduction) => {
    const bend = { ...galv, angle };
    expect(Math.abs(bendAllowance(bend) - allowance)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(2 * setback('apex', bend) - setbacks)).toBeLessThanOrEqual(0.0001);
    expect(Math.abs(takenOff(bend) - deduction)).toBeLessThanOrEqual(0.00005);
  });

  it('B12: aluminium .040, R .0625, K .41, square, takes off .0811 in', () => {
    const bend = { angle: 90, radius: 0.0625, thickness: 0.04, kFactor: 0.41 };
    expect(Math.abs(takenOff(bend) - 0.0811)).toBeLessThanOrEqual(0.00005);
  });

  it('B13: a drip edge 3.5 + 2.5 + .5 kick + .5 closed hem is cut 6.927 in wide', () => {
    const dripEdge = inInches([3.5, 2.5, 0.5], [turned(90), turned(30)], [null, hem(0.5)]);
    expect(Math.abs(girthInches(dripEdge, 0.0276, 0.0394, 0.446) - 6.927)).toBeLessThanOrEqual(0.0005);
  });

  it('B14: a ridge cap 6 + 6 with two half-inch hems and one 45° bend is cut 12.961 in wide', () => {
    const ridgeCap = inInches([6, 6], [turned(45)], [hem(0.5), hem(0.5)]);
    expect(Math.abs(girthInches(ridgeCap, 0.0276, 0.0394, 0.446) - 12.961)).toBeLessThanOrEqual(0.0005);
  });
});

describe('Machinery’s Handbook, length of a square bend (handbook, from memory)', () => {
  // L = .55 T, .64 T or .71 T + 1.57 R by hardness of the metal; 1.57 stands for π/2.
  it.each([
    ['soft copper and brass', 0.55, 0.35],
    ['soft steel, aluminium, half-hard copper', 0.64, 0.407],
    ['cold-rolled steel, hard copper, bronze', 0.71, 0.452],
  ])('%s: a test strip of %d T + 1.57 R shows a K of %d', (_, perT, kFactor) => {
    const blank = 2 + perT * 0.05 + (Math.PI / 2) * 0.1;
    expect(kFactorFromTest({ blank, flats: 2, angle: 90, radius: 0.1, thickness: 0.05 })).toBeCloseTo(
      kFactor,
      3,
    );
  });
});

describe('DIN 6935, cold bending of flat steel', () => {
  /** The standard's correction factor, a share of half the thickness. */
  const correction = (r: number, s: number): number => Math.min(1, 0.65 + 0.5 * Math.log10(r / s));
  /** Compensation v for opening angle β: what the standard adds to the sum of the outside legs. */
  const compensation = (opening: number, r: number, s: number): number => {
    const arc = Math.PI * ((180 - opening) / 180) * (r + (s / 2) * correction(r, s));
    const reach = opening <= 90 ? 1 : Math.tan(((180 - opening) / 2) * (Math.PI / 180));
    return arc - 2 * (r + s) * reach;
  };

  it.each([
    [90, 1, 1],
    [90, 3, 3],
    [90, 12, 2],
    [45, 2, 1],
    [60, 6, 2],
    [120, 2, 2],
    [150, 4, 1.5],
  ])('opening angle %d°, r %d, s %d: an outside-measured blank is its legs plus v', (opening, r, s) => {
    const kFactor = correction(r, s) / 2;
    const profile: Profile = {
      ...inInches([], [turned(180 - opening, r)]),
      flangesMm: [50, 40],
      measured: 'outside',
    };
    const width = girth(profile, { thicknessMm: s, kFactor, rule: 'computed', units: metric });
    expect(width.ok && width.value.girthMm).toBeCloseTo(90 + compensation(opening, r, s), 9);
  });
});

describe('hems', () => {
  it('a closed hem takes off 43 % of the thickness (common practice, no source)', () => {
    expect(hemDeduction(hemShape({ kind: 'closed', lengthMm: 12 }, 1, 0.446))).toBeCloseTo(0.43, 2);
  });

  it('an open hem of one thickness takes off next to nothing (worked by hand: .028 T)', () => {
    expect(hemDeduction(hemShape({ kind: 'open', lengthMm: 12 }, 1, 0.446))).toBeCloseTo(0.028, 3);
  });

  it('an open hem with a gap of its own takes off 2(R + T) − π(R + K·T), R half the gap (worked by hand)', () => {
    // T 1, gap 3: 2 × 2.5 − π × (1.5 + 0.446) = 5 − 6.1135: the blank grows by 1.1135.
    const wide = hemShape({ kind: 'open', lengthMm: 12, gapMm: 3 }, 1, 0.446);
    expect(hemDeduction(wide)).toBeCloseTo(-1.1135, 4);
  });

  it('a teardrop turns by 180° + 2·arctan(R/s) and takes its arc off 2(R + T) (worked by hand; plane geometry, no source)', () => {
    // T 1, eye 2, lip 12: R 1, s 10, arctan 0.1 = 5.7106°; 4 − 191.4212° × (1 + 0.446) = 4 − 4.8311.
    const drop = hemShape({ kind: 'teardrop', lengthMm: 12, gapMm: 2 }, 1, 0.446);
    expect(drop.angle).toBeCloseTo(191.4212, 4);
    expect(hemDeduction(drop)).toBeCloseTo(4 - 4.8311, 3);
  });
});

describe('the radius that a V makes', () => {
  const aluminium = { metal: 'aluminium', tensileMpa: 152 } as const;

  // Published: a trade magazine on the 20 % rule, aluminium at 15 %: a 50 mm die (1.968 in) gives .295 in, 16 mm .0945
  // (printed cut off, .094).
  it.each([
    [1.968, 0.295],
    [0.63, 0.0945],
  ])('a V of %d in makes %d in in aluminium', (opening, radius) => {
    expect(Math.abs(airBendRadiusMm(opening, aluminium) - radius)).toBeLessThanOrEqual(0.00025);
  });

  it('a V of .984 in makes .034 in in soft aluminium of 13 ksi, where a reader of the magazine measured .033', () => {
    // Published: trade magazine on forming soft aluminium, 16 % × tensile strength / 60 ksi.
    const soft = { metal: 'aluminium', tensileMpa: 13 * MPA_PER_KSI } as const;
    expect(airBendRadiusMm(0.984, soft).toFixed(3)).toBe('0.034');
    expect(Math.abs(airBendRadiusMm(0.984, soft) - 0.033)).toBeLessThan(0.0015);
  });

  it('in mild steel it is the 5/16 in that a tooling chart prints for a V of 2 in, within a thirty-second', () => {
    // Published: a brake dealer's chart.
    const steel = { metal: 'steel', tensileMpa: 60 * MPA_PER_KSI } as const;
    expect(Math.abs(airBendRadiusMm(2, steel) - 5 / 16)).toBeLessThanOrEqual(1 / 32);
  });

  it('in stainless it is 20 to 22 % of the V (handbook, from memory)', () => {
    const share = airBendRadiusMm(1, { metal: 'stainless', tensileMpa: 620 });
    expect(share).toBeGreaterThanOrEqual(0.2);
    expect(share).toBeLessThanOrEqual(0.22);
  });
});
