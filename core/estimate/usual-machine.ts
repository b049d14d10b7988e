import type { Machine } from '../shop/machine.ts';
import type { Stage } from '../part/stage.ts';
import { inchesToMm, type LengthUnits } from '../units/length.ts';
import { freeCode } from '../code.ts';
import { TIMES_EDITION } from './standards.ts';
import { defaultChangeover } from './changeover.ts';

type Limits = Pick<
  Machine,
  'maxLengthMm' | 'maxThicknessMm' | 'tonnes' | 'dieOpeningMm' | 'backGaugeMm' | 'minStripMm'
>;

/** What stands behind the usual figures, in words of the shop. */
export const USUAL_MACHINE_BASIS: Readonly<Record<LengthUnits, string>> = {
  in: 'figures of an ordinary ten-foot machine, not of yours',
  mm: 'figures of an ordinary three-metre machine, not of yours',
};

/**
 * Limits of an ordinary light machine, to be corrected by the plate of the shop's own. Common practice, no source; the
 * narrowest strip is the inch below which strips are avoided on a power shear (common practice, no source).
 */
const NO_LIMITS: Limits = {
  ...{ maxLengthMm: null, maxThicknessMm: null, tonnes: null },
  ...{ dieOpeningMm: null, backGaugeMm: null, minStripMm: null },
};
const BENCH = { in: NO_LIMITS, mm: NO_LIMITS };
const USUAL_LIMITS: Readonly<Record<Stage, Readonly<Record<LengthUnits, Limits>>>> = {
  ...{ notch: BENCH, end: BENCH, outside: BENCH, pack: BENCH },
  shear: {
    in: {
      maxLengthMm: inchesToMm(122),
      maxThicknessMm: inchesToMm(0.063),
      tonnes: null,
      dieOpeningMm: null,
      backGaugeMm: { min: inchesToMm(0.5), max: inchesToMm(36) },
      minStripMm: inchesToMm(1),
    },
    mm: {
      maxLengthMm: 3100,
      maxThicknessMm: 1.6,
      tonnes: null,
      dieOpeningMm: null,
      backGaugeMm: { min: 10, max: 900 },
      minStripMm: 25,
    },
  },
  brake: {
    in: {
      maxLengthMm: inchesToMm(122),
      maxThicknessMm: inchesToMm(0.075),
      tonnes: 100,
      dieOpeningMm: inchesToMm(5 / 16),
      backGaugeMm: null,
      minStripMm: null,
    },
    mm: {
      maxLengthMm: 3100,
      maxThicknessMm: 2,
      tonnes: 100,
      dieOpeningMm: 8,
      backGaugeMm: null,
      minStripMm: null,
    },
  },
};

const NAMES: Readonly<Record<Stage, { readonly code: string; readonly name: string }>> = {
  shear: { code: 'S1', name: 'Shear' },
  brake: { code: 'B1', name: 'Press brake' },
  notch: { code: 'N1', name: 'Notching bench' },
  end: { code: 'E1', name: 'End-work bench' },
  outside: { code: 'O1', name: 'Outside shop' },
  pack: { code: 'P1', name: 'Packing bench' },
};

/**
 * A machine to begin with, every figure of which is a usual one.
 * @param taken codes of the machines that are there
 */
export function usualMachine(
  stage: Stage,
  units: LengthUnits,
  calendarId: string,
  taken: readonly string[],
): Machine {
  const { code, name } = NAMES[stage];
  const free = taken.every((id) => id.toLowerCase() !== code.toLowerCase());
  return {
    id: free ? code : freeCode(code, taken).toUpperCase(),
    name,
    stage,
    ...USUAL_LIMITS[stage][units],
    crew: 1,
    calendarId,
    changeover: defaultChangeover(stage),
    standards: {},
    betweenFramesMm: null,
    timesEdition: TIMES_EDITION,
    state: null,
    revision: 0,
  };
}

/** The limits that still are the usual ones: nobody has looked at the machine's plate for them. */
export const stillUsual = (machine: Machine, units: LengthUnits): (keyof Limits)[] => {
  const usual = USUAL_LIMITS[machine.stage][units];
  return (Object.keys(usual) as (keyof Limits)[]).filter(
    (key) => machine[key] !== null && JSON.stringify(machine[key]) === JSON.stringify(usual[key]),
  );
};
