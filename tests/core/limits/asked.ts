import type { Asked } from '../../../core/limits/finding.ts';
import { checkPart } from '../../../core/limits/limits.ts';
import { machine, type Machine } from '../../../core/shop/machine.ts';
import type { Profile } from '../../../core/part/profile.ts';
import { inchesToMm } from '../../../core/units/length.ts';
import { inches } from '../../support/writing.ts';

/** Machines and metal that take a usual piece of trim without a word, for tests that change one thing. */

const base = {
  id: 'M1',
  name: 'Machine 1',
  maxLengthMm: 3100,
  crew: 1,
  calendarId: 'day',
  changeover: { combine: 'sum', attributes: {}, exceptions: [] },
  standards: {},
  betweenFramesMm: null,
  timesEdition: 1,
  state: null,
  revision: 0,
};
export const aShear = (changes: Partial<Machine> = {}): Machine =>
  machine.parse({
    ...base,
    stage: 'shear',
    maxThicknessMm: inchesToMm(0.1345),
    tonnes: null,
    dieOpeningMm: null,
    backGaugeMm: { min: 10, max: 900 },
    minStripMm: 25,
    ...changes,
  });
export const aBrake = (changes: Partial<Machine> = {}): Machine =>
  machine.parse({
    ...base,
    stage: 'brake',
    maxThicknessMm: 4,
    tonnes: 90,
    dieOpeningMm: 6.35,
    backGaugeMm: null,
    minStripMm: null,
    ...changes,
  });
export const asked = (changes: Partial<Omit<Asked, 'part'>> = {}): Omit<Asked, 'part'> => ({
  material: {
    name: 'Galvanized',
    metal: 'galvanized',
    tensileMpa: 413.7,
    temper: null,
    kFactor: 0.446,
    deductions: [],
  },
  gauge: { label: '24', thicknessMm: 0.701, kgPerM2: 5.64 },
  lengthMm: 3048,
  girthRule: 'computed',
  dieOpeningMm: 6.35,
  tools: [],
  units: inches,
  partRules: {},
  ...changes,
});
/** What is found, as "stop: rule". */
export const found = (profile: Profile, on: Machine, want = asked()): string[] =>
  checkPart({ id: 'P', name: 'Part', profile, bendOrder: null }, want, on).map(
    (f) => `${f.severity}: ${f.rule}`,
  );
