import { defaultWeights, type ObjectiveWeights } from '../../../core/shop/settings.ts';

/** A usual way to weigh dates against changeovers. */
export interface Preset {
  readonly id: string;
  readonly name: string;
  readonly words: string;
  readonly weights: ObjectiveWeights;
}

/** Our own starting points, common practice, no source: only what an hour of changeover weighs differs. */
export const presets: readonly Preset[] = [
  {
    id: 'dates',
    name: 'Dates first',
    words: 'Change over as often as it takes to be on time.',
    weights: { ...defaultWeights, changeover: 1 },
  },
  {
    id: 'balanced',
    name: 'Balanced',
    words: 'Be on time, and group work: every changeover holds up all that is behind it.',
    weights: defaultWeights,
  },
  {
    id: 'fewest',
    name: 'Fewest changeovers',
    words: 'Long runs; lines may be late to save changing over.',
    weights: { ...defaultWeights, changeover: 60 },
  },
];

/** The preset with just these weights, if any. */
export const presetOf = (weights: ObjectiveWeights): Preset | undefined =>
  presets.find((preset) =>
    (Object.keys(weights) as (keyof ObjectiveWeights)[]).every((key) => preset.weights[key] === weights[key]),
  );

const round = (value: number): string => String(Number(value.toPrecision(3)));

/** What the weights mean, one sentence a trade-off, for a line of usual importance. */
export function weightsInWords({ lateness, changeover, flow, calm }: ObjectiveWeights): string[] {
  if (![lateness, changeover, flow, calm].every((w) => w >= 0))
    return ['The words appear when every weight is given.'];
  if (lateness === 0 && changeover === 0 && flow === 0 && calm === 0)
    return ['With every weight at 0 any plan is as good as any other.'];
  const against = (weight: number, what: string): string => {
    if (weight === 0 && lateness === 0) return '';
    if (weight === 0) return `${what} does not count.`;
    if (lateness === 0) return `${what} counts, being late does not.`;
    return `A line an hour late weighs as much as ${round(lateness / weight)} h of ${what.charAt(0).toLowerCase()}${what.slice(1)}.`;
  };
  return [
    against(changeover, 'Changing over'),
    against(flow, 'Work lying in the shop'),
    against(calm, 'Moving lines from where the plan has them'),
  ].filter((words) => words !== '');
}
