import type { Machine } from '../shop/machine.ts';
import type { Blank } from '../part/blank.ts';
import { standard, type Timed } from './standards.ts';

/** One element of an estimate: how often it happens, what each takes, and the product in whole seconds. */
export interface Reason {
  readonly label: string;
  readonly count: number;
  readonly each: number;
  readonly seconds: number;
}

/** Machine time of one operation, changeover left out, and how it came about. Labour is `seconds` × `people`. */
export interface Estimate {
  /** Whole seconds; the sum of the reasons' seconds. */
  readonly seconds: number;
  readonly people: number;
  /** What of the largest lift asks for two; empty where one can do it. */
  readonly heavyBy: readonly TwoPeopleBy[];
  readonly reasons: readonly Reason[];
}

/** An element of work; `count` may be a share or a weight where `each` is per share or per kilogram. */
export const reason = (label: string, count: number, each: number): Reason => ({
  label,
  count,
  each,
  seconds: Math.round(count * each),
});

/** What is picked up at once: a piece at the brake, a sheet at the shear. */
export type Lift = Omit<Blank, 'girthMm'>;
export type TwoPeopleBy = 'weight' | 'length' | 'area';

/**
 * What of a lift asks for two people: its weight, its area, or its length where it is flimsy. Each has a figure of its
 * own; a length or area of 0 asks for nobody. Common practice, no source.
 */
export function twoPeopleBy(machine: Timed, lift: Lift): TwoPeopleBy[] {
  const each = (key: string): number => standard(machine, key);
  // A hair of grace, so that 96 in turned to millimetres are 8 ft.
  const from = (figure: number, value: number): boolean => figure > 0 && value >= figure * (1 - 1e-9);
  return [
    ...(lift.weightKg > each('twoPersonKg') ? (['weight'] as const) : []),
    ...(from(each('twoPersonMm'), lift.lengthMm) && lift.thicknessMm <= each('flimsyMm')
      ? (['length'] as const)
      : []),
    ...(from(each('twoPersonM2'), lift.areaM2) ? (['area'] as const) : []),
  ];
}

/** Who does it: the machine's crew, or two where one of the lifts is more than one person should take. */
export function peopleFor(
  machine: Timed & Pick<Machine, 'crew'>,
  lifts: readonly Lift[],
): Pick<Estimate, 'people' | 'heavyBy'> {
  const asked = new Set(lifts.flatMap((lift) => twoPeopleBy(machine, lift)));
  return { people: Math.max(machine.crew, asked.size > 0 ? 2 : 1), heavyBy: [...asked] };
}

/**
 * Adds the allowance and sums up. The allowance is a share of the work, work × (1 + a), not of the day, work / (1 − a).
 * @param work elements in the order in which they happen; those that never happen or take no time are left out
 */
export function estimateOf(
  machine: Timed,
  who: Pick<Estimate, 'people' | 'heavyBy'>,
  work: readonly Reason[],
): Estimate {
  const done = work.filter((r) => r.count > 0 && r.each > 0);
  const sum = done.reduce((all, r) => all + r.seconds, 0);
  const share = standard(machine, 'allowance');
  const reasons = share > 0 && sum > 0 ? [...done, reason('allowance, share of the work', share, sum)] : done;
  return { seconds: reasons.reduce((all, r) => all + r.seconds, 0), ...who, reasons };
}
