import { describe, expect, it } from 'vitest';
import { cautiousThicknessMm, deratedThicknessMm } from '../../core/limits/limits.ts';
import { mostPerMm } from '../../core/part/concentrated-load.ts';
import { MILD_STEEL_MPA } from '../../core/part/radius.ts';
import { airBendKn, KN_PER_US_TON } from '../../core/part/tonnage.ts';
import { MPA_PER_KSI } from '../../core/units/force.ts';
import { inchesToMm, MM_PER_FOOT } from '../../core/units/length.ts';

/** US tons to air-bend: thickness and V in inches, length in feet, strength in ksi. */
const usTons = (thickness: number, feet: number, opening: number, ksi = 60): number =>
  airBendKn({
    thicknessMm: inchesToMm(thickness),
    lengthMm: inchesToMm(12 * feet),
    dieOpeningMm: inchesToMm(opening),
    tensileMpa: ksi * MPA_PER_KSI,
  }) / KN_PER_US_TON;

describe('force to air-bend', () => {
  it('T1: 1/8 in mild steel, 4 ft, V 1 in takes 9.0 tons a foot, 36 in all', () => {
    // Published: a die shop's bending note, worked with 575 T²/V; printed to 0.1 ton a foot.
    expect(Math.abs(usTons(0.125, 1, 1) - 9)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(usTons(0.125, 4, 1) - 36)).toBeLessThanOrEqual(0.2);
  });

  it('T2: 1/4 in mild steel, 10 ft, V 2 in is within a fifth of a printed chart’s 155 tons', () => {
    // Published: a brake dealer's tonnage chart. Charts run lower than the formula; we keep the safer figure.
    expect(usTons(0.25, 10, 2) / 155).toBeGreaterThan(1);
    expect(usTons(0.25, 10, 2) / 155).toBeLessThan(1.2);
  });

  it('T3: 44.5 mm wide, 3.2 thick, V 25, 450 MPa is a fifth above a textbook’s 10 909 N', () => {
    // Handbook, from memory: Groover, Fundamentals of Modern Manufacturing, F = 1.33·TS·w·t²/D. The trade's 575 is 1.60.
    const kn = airBendKn({ thicknessMm: 3.2, lengthMm: 44.5, dieOpeningMm: 25, tensileMpa: 450 });
    expect(kn / 10.909).toBeCloseTo(1.597 / 1.33, 2);
  });

  // Published: a die maker's rule of thumb, 60 T tons a foot of mild steel at V = 8 T. Rules and charts differ by a fifth.
  it('T11: mild steel over V = 8 T is within a fifth of 60 T tons a foot, at any thickness', () => {
    const share = usTons(0.0747, 1, 8 * 0.0747) / (60 * 0.0747);
    expect(share).toBeGreaterThan(1);
    expect(share).toBeLessThanOrEqual(1.2);
  });

  it('T12: stainless 304 of 90 ksi takes 1.5 to 1.55 times mild steel', () => {
    // Published: a die shop's bending note and a die maker's table of metals.
    const times = usTons(0.0625, 1, 0.5, 90) / usTons(0.0625, 1, 0.5, 60);
    expect(times).toBeGreaterThanOrEqual(1.5 - 1e-9);
    expect(times).toBeLessThanOrEqual(1.55);
  });
});

it('a brake of 100 t with 10 ft between its frames stands 16.7 t a foot', () => {
  // Published: an article of the trade press on the limits of press brake tooling, the 60 % rule.
  expect((mostPerMm(100, inchesToMm(120)) * MM_PER_FOOT).toFixed(1)).toBe('16.7');
});

describe('thickness that a machine rated in mild steel takes', () => {
  it.each([
    [600, 1.2],
    [800, 0.8],
  ])('of %d MPa metal lies between the two rules on a plate that takes 1.6 mm of 400 MPa', (mpa, plate) => {
    // Published: a shear maker's plate, 1.6, 1.2 and 0.8 mm of 400, 600 and 800 MPa.
    const ofMildSteel = (at: number): number => (at * MILD_STEEL_MPA) / 400;
    expect(cautiousThicknessMm(1.6, ofMildSteel(mpa))).toBeLessThanOrEqual(plate + 1e-9);
    expect(deratedThicknessMm(1.6, ofMildSteel(mpa))).toBeGreaterThan(plate);
  });

  // Worked by hand from the force law F ∝ T² × strength (freely published shear charts): √(60 / UTS) to 0.01.
  it.each([
    ['structural grade 50', 65, 0.96],
    ['structural grade 80', 82, 0.86],
    ['stainless 304', 90, 0.82],
  ])('of %s, %d ksi, is %d of its rating', (_, ksi, share) => {
    expect(Math.abs(deratedThicknessMm(1, ksi * MPA_PER_KSI) - share)).toBeLessThanOrEqual(0.005);
  });

  it('of stainless 304 on a shear rated 10 gauge is .110 in, and soft metal earns nothing', () => {
    expect(Math.abs(deratedThicknessMm(0.1345, 90 * MPA_PER_KSI) - 0.11)).toBeLessThanOrEqual(0.0005);
    expect(deratedThicknessMm(0.1345, 22 * MPA_PER_KSI)).toBe(0.1345);
  });
});
