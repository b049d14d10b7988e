import type { Machine } from '../shop/machine.ts';
import type { Stage } from '../part/stage.ts';
import { MM_PER_FOOT, MM_PER_INCH, type LengthUnits, type Units } from '../units/length.ts';
import { KG_PER_LB } from '../units/weight.ts';
import { writeNumber } from '../units/number.ts';

/**
 * Time standards: what one element of shear or brake work takes. The usual figures are starting points between a low and a
 * high one; a shop's own timings, kept in `machine.standards`, beat every one of them. They come in editions: a machine
 * follows the one that it was entered with (`machine.timesEdition`) until the shop takes a newer one, so that no plan
 * changes by itself. The second edition counts a first piece with the changeover that makes it necessary (first-piece.ts),
 * bundling beside the machine, two people by length and area too, and long pieces turned end for end by their own figure.
 */
export interface Standard {
  readonly key: string;
  /** What is timed, in the words of a shop of either units. */
  readonly label: Readonly<Record<LengthUnits, string>>;
  readonly unit: 's' | 's/kg' | 'count' | 'mm' | 'thickness' | 'm2' | 'kg' | 'share' | 'days';
  /** The usual figure of the newest edition. */
  readonly default: number;
  /** That of the first; the key of another standard where the two were one. */
  readonly first: number | string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** A standard's unit as a shop reads and types it. */
export interface StandardUnit {
  readonly name: string;
  /** What one of it is in the unit that the figure is kept in. */
  readonly per: number;
}

/** The newest edition, which new machines follow. */
export const TIMES_EDITION = 2;

/** What a figure is looked up by. */
export type Timed = Pick<Machine, 'stage' | 'standards' | 'timesEdition'>;

const METRIC_NAMES: Readonly<Partial<Record<Standard['unit'], string>>> = {
  count: '×',
  share: '',
  thickness: 'mm',
  m2: 'm²',
};

const INCH_UNITS: Readonly<Partial<Record<Standard['unit'], StandardUnit>>> = {
  's/kg': { name: 's/lb', per: 1 / KG_PER_LB },
  kg: { name: 'lb', per: KG_PER_LB },
  mm: { name: 'in', per: MM_PER_INCH },
  thickness: { name: 'in', per: MM_PER_INCH },
  m2: { name: 'ft²', per: (MM_PER_FOOT / 1000) ** 2 },
};

const COMMON = 'common practice, no source';
/** Published: a trade journal, June 2001, of the ram's share; what a cut takes all in: common practice, no source. */
const HANDLING =
  'of 15 to 40 s a cut all in (common practice, no source), the ram moves about 5 % (published)';

const row = (
  key: string,
  label: string | Standard['label'],
  unit: Standard['unit'],
  [low, usual, high]: readonly [number, number, number],
  { source = COMMON, first = usual }: Partial<Pick<Standard, 'source' | 'first'>> = {},
): Standard => ({
  ...{ key, unit, low, high, source, first, default: usual },
  label: typeof label === 'string' ? { in: label, mm: label } : label,
});

const hit = (which: string, feet: string, metres: string): Standard['label'] => ({
  in: `Hit, piece ${which} ${feet} ft`,
  mm: `Hit, piece ${which} ${metres} m`,
});

const turning = (which: string): Standard['label'] => ({
  in: `Turn a piece ${which} 6 ft end for end`,
  mm: `Turn a piece ${which} 1.83 m end for end`,
});

const allowance = row(
  'allowance',
  'Personal, fatigue and delay allowance, as a share of the work (not of the day)',
  'share',
  [0.1, 0.15, 0.2],
);
const bundling = [
  row('bundle', 'Bundle, label and stage, once a line', 's', [60, 90, 120], { first: 300 }),
  row('bundleOnClock', 'Share of bundling in which the machine waits for it', 'share', [0, 0, 1], {
    first: 1,
  }),
] as const;
/** Any one of them asks for two; 0 for never. Of lifts in a shop; a limit of law or health stands above them. */
const twoPeople = [
  row('twoPersonKg', 'Weight from which two people lift', 'kg', [11, 18, 23]),
  row(
    'twoPersonMm',
    'Length from which two people carry a flimsy piece; 0: never',
    'mm',
    [1828.8, 2438.4, 3048],
    {
      first: 0,
    },
  ),
  row('flimsyMm', 'Thickness up to which a piece is flimsy', 'thickness', [0.48, 0.6, 0.75], { first: 0 }),
  row('twoPersonM2', 'Area from which two people carry a piece; 0: never', 'm2', [1.4, 1.858, 2.8], {
    first: 0,
  }),
] as const;

const shear = [
  row('sheetLoad', 'Load and square a sheet', 's', [20, 45, 90]),
  row('sheetLoadPerKg', 'Extra for the weight of the sheet that a person lifts', 's/kg', [0, 0, 2]),
  row('feedAgain', 'Feed a panel or strip again', 's', [5, 10, 20]),
  row('backGaugeMove', 'Move the back gauge, powered', 's', [3, 6, 180]),
  row('cut', 'Feed and cut', 's', [5, 9, 14], { source: HANDLING }),
  row(
    'cutContinuous',
    'Feed and cut, continuous strokes (only where set up and guarded for it)',
    's',
    [2, 4, 6],
  ),
  row(
    'continuousFrom',
    'Cuts in a row from which strokes may run on, only where set up and guarded for it; 0: never',
    'count',
    [0, 0, 8],
  ),
  row('stack', 'Stack a blank behind the shear', 's', [10, 16, 26], { source: HANDLING }),
  ...bundling,
  allowance,
  ...twoPeople,
] as const;

const brake = [
  row('pickUp', 'Pick up a blank', 's', [2, 3, 10]),
  row('putDown', 'Put down a piece', 's', [2, 2, 10]),
  row('handlingPerKg', 'Extra handling for the weight of the piece', 's/kg', [0.3, 0.8, 1.2]),
  row('hitShort', hit('under', '2', '0.61'), 's', [5, 8, 12]),
  row('hitMedium', hit('of', '2 to 6', '0.61 to 1.83'), 's', [8, 12, 16]),
  row('hitLong', hit('over', '6', '1.83'), 's', [10, 16, 25]),
  row('flip', 'Turn the piece over', 's', [3, 6, 12]),
  row('turn', turning('up to'), 's', [3, 6, 12]),
  row('turnLong', turning('over'), 's', [6, 12, 20], { first: 'turn' }),
  row('firstPiece', 'First piece: form, measure, adjust', 's', [180, 360, 900]),
  ...bundling,
  allowance,
  ...twoPeople,
] as const;

/** Work at a bench or by a person; common practice, no source, but for those who time their own. */
const bench = (setUp: readonly [number, number, number], each: readonly [number, number, number]) =>
  [
    row('perLine', 'Get ready and clear away, once a line', 's', setUp),
    row('perPiece', 'Work on a piece, where its part says nothing else', 's', each),
    allowance,
  ] as const;
const BENCHES = {
  notch: bench([60, 120, 300], [8, 20, 60]),
  end: bench([60, 180, 600], [20, 60, 300]),
  pack: bench([60, 120, 300], [5, 15, 60]),
  outside: [row('days', 'Days that pieces are away, where their part says nothing else', 'days', [2, 5, 15])],
} as const;

/** The unit of a standard in a shop; changeovers and all that has no standard are in seconds. */
export const standardUnit = (known: Standard | undefined, units: LengthUnits): StandardUnit => {
  const unit = known?.unit ?? 's';
  const name = METRIC_NAMES[unit] ?? unit;
  return (units === 'in' ? INCH_UNITS[unit] : undefined) ?? { name, per: 1 };
};

/** Decimals that a figure is written and typed with: thicknesses to a thousandth. */
export const standardPlaces = (known: Standard | undefined): number => (known?.unit === 'thickness' ? 3 : 2);

/** A figure in the shop's units, to a hundredth of them: "0.36 s/lb", "15 %". */
export function standardFigure(known: Standard | undefined, value: number, units: Units): string {
  if (known?.unit === 'share') return `${Math.round(value * 100)} %`;
  const { name, per } = standardUnit(known, units.units);
  return `${writeNumber(value / per, units.decimals, standardPlaces(known))} ${name}`;
}

/** Every standard that a machine's edition tells apart, in the order in which the work goes. */
export const standardsOf = ({
  stage,
  timesEdition,
}: Pick<Machine, 'stage' | 'timesEdition'>): readonly Standard[] =>
  timesEdition >= TIMES_EDITION ? ALL[stage] : FIRST[stage];

const ALL: Readonly<Record<Stage, readonly Standard[]>> = { shear, brake, ...BENCHES };
const toldApart = ({ first }: Standard): boolean => typeof first === 'number';
const FIRST: typeof ALL = { ...ALL, shear: shear.filter(toldApart), brake: brake.filter(toldApart) };

/** What a machine's edition says of a standard, where the shop has no figure of its own. */
export function usualFigure(machine: Timed, known: Standard): number {
  if (machine.timesEdition >= TIMES_EDITION) return known.default;
  return typeof known.first === 'number' ? known.first : standard(machine, known.first);
}

/**
 * A machine's figure for one standard: its own where it has one, else the usual one of its edition.
 * @throws RangeError on a key that the stage does not have: a bug
 */
export function standard(machine: Timed, key: string): number {
  const known = ALL[machine.stage].find((s) => s.key === key);
  if (known === undefined) throw new RangeError(`standard: a ${machine.stage} has no standard "${key}"`);
  return machine.standards[key] ?? usualFigure(machine, known);
}
