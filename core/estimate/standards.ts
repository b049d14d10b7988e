import type { Machine } from '../shop/machine.ts';
import type { Stage } from '../part/stage.ts';
import { MM_PER_INCH, type LengthUnits } from '../units/length.ts';
import { KG_PER_LB } from '../units/weight.ts';

/**
 * Time standards: what one element of shear or brake work takes. The defaults are starting points between a low and a
 * high figure; a shop's own timings, kept in `machine.standards`, beat every one of them.
 */
export interface Standard {
  readonly key: string;
  /** What is timed, in the words of a shop of either units. */
  readonly label: Readonly<Record<LengthUnits, string>>;
  readonly unit: 's' | 's/kg' | 'count' | 'mm' | 'kg' | 'share';
  readonly default: number;
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

const INCH_UNITS: Readonly<Partial<Record<Standard['unit'], StandardUnit>>> = {
  's/kg': { name: 's/lb', per: 1 / KG_PER_LB },
  kg: { name: 'lb', per: KG_PER_LB },
  mm: { name: 'in', per: MM_PER_INCH },
};

const COMMON = 'common practice, no source';
/** Source of the shares: a trade journal, June 2001; of 15 to 40 s a cut: common practice, no source. */
const HANDLING =
  'of 15 to 40 s a cut all in (common practice, no source), the ram moves about 5 %; handling is 30 % in front and 65 % behind';

const row = (
  key: string,
  label: string | Standard['label'],
  unit: Standard['unit'],
  [low, usual, high]: readonly [number, number, number],
  source = COMMON,
): Standard => ({
  ...{ key, unit, low, high, source, default: usual },
  label: typeof label === 'string' ? { in: label, mm: label } : label,
});

const hit = (which: string, feet: string, metres: string): Standard['label'] => ({
  in: `Hit, piece ${which} ${feet} ft`,
  mm: `Hit, piece ${which} ${metres} m`,
});

const allowance = row(
  'allowance',
  'Personal, fatigue and delay allowance, as a share of the work (not of the day)',
  'share',
  [0.1, 0.15, 0.2],
);
const twoPersonKg = row('twoPersonKg', 'Weight from which two people lift', 'kg', [11, 18, 23]);
const bundle = row('bundle', 'Bundle, label and stage, once a line', 's', [120, 300, 600]);

const shear = [
  row('sheetLoad', 'Load and square a sheet', 's', [20, 45, 90]),
  row('sheetLoadPerKg', 'Extra for the weight of the sheet that a person lifts', 's/kg', [0, 0, 2]),
  row('feedAgain', 'Feed a panel or strip again', 's', [5, 10, 20]),
  row('backGaugeMove', 'Move the back gauge, powered', 's', [3, 6, 180]),
  row('cut', 'Feed and cut', 's', [5, 9, 14], HANDLING),
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
  row('stack', 'Stack a blank behind the shear', 's', [10, 16, 26], HANDLING),
  bundle,
  allowance,
  twoPersonKg,
] as const;

const brake = [
  row('pickUp', 'Pick up a blank', 's', [2, 3, 10]),
  row('putDown', 'Put down a piece', 's', [2, 2, 10]),
  row('handlingPerKg', 'Extra handling for the weight of the piece', 's/kg', [0.3, 0.8, 1.2]),
  row('hitShort', hit('under', '2', '0.61'), 's', [5, 8, 12]),
  row('hitMedium', hit('of', '2 to 6', '0.61 to 1.83'), 's', [8, 12, 16]),
  row('hitLong', hit('over', '6', '1.83'), 's', [10, 16, 25]),
  row('flip', 'Turn the piece over', 's', [3, 6, 12]),
  row('turn', 'Turn the piece end for end', 's', [3, 6, 12]),
  row('firstPiece', 'First piece: form, measure, adjust, once a line', 's', [180, 360, 900]),
  bundle,
  allowance,
  twoPersonKg,
] as const;

/** The unit of a standard in a shop; changeovers and all that has no standard are in seconds. */
export const standardUnit = (known: Standard | undefined, units: LengthUnits): StandardUnit => {
  const unit = known?.unit ?? 's';
  const name = { count: '×', share: '' }[unit as string] ?? unit;
  return (units === 'in' ? INCH_UNITS[unit] : undefined) ?? { name, per: 1 };
};

/** A figure in the shop's units, to a hundredth of them: "0.36 s/lb", "15 %". */
export function standardFigure(known: Standard | undefined, value: number, units: LengthUnits): string {
  if (known?.unit === 'share') return `${Math.round(value * 100)} %`;
  const { name, per } = standardUnit(known, units);
  return `${Number((value / per).toFixed(2))} ${name}`;
}

/** Every standard of a stage, in the order in which the work goes. */
export const standardsOf = (stage: Stage): readonly Standard[] => (stage === 'shear' ? shear : brake);

/**
 * A machine's figure for one standard: its own where it has one, else the stage's default.
 * @throws RangeError on a key that the stage does not have: a bug
 */
export function standard(machine: Pick<Machine, 'stage' | 'standards'>, key: string): number {
  const known = standardsOf(machine.stage).find((s) => s.key === key);
  if (known === undefined) throw new RangeError(`standard: a ${machine.stage} has no standard "${key}"`);
  return machine.standards[key] ?? known.default;
}
