import { formatDuration } from '../../../core/units/duration.ts';
import { formatMoney, type MoneyStyle } from '../../../core/units/money.ts';
import { defaultWeights, type ObjectiveWeights } from '../../../core/shop/settings.ts';

/** A usual way to set priorities between dates and changeovers. */
interface Preset {
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

/** What the priorities mean, one sentence a trade-off, for a line of usual importance. */
export function weightsInWords(
  { lateness, changeover, flow, stability, material }: ObjectiveWeights,
  money: MoneyStyle,
): string[] {
  if (![lateness, changeover, flow, stability, material].every((weight) => weight >= 0))
    return ['The words appear when every priority is given.'];
  const terms: (readonly [number, string, string])[] = [
    [changeover, 'changeover', 'changeover'],
    [flow, 'time in the shop', 'a line lying in the shop'],
    [stability, 'stability', 'a line moved from where the plan has it'],
  ];
  if (lateness === 0) {
    const all: typeof terms = [...terms, [material, 'stock cost', '']];
    const counted = all.filter(([weight]) => weight > 0).map(([, name]) => name);
    return [
      `Being late does not count${counted.length > 0 ? `, only ${counted.join(' and ')}` : ', nor does anything else'}.`,
    ];
  }
  const inTime = terms.map(([weight, name, what]) =>
    weight === 0
      ? `${name.charAt(0).toUpperCase()}${name.slice(1)} does not count.`
      : `A line an hour late matters as much as ${formatDuration((3600 * lateness) / weight)} of ${what}.`,
  );
  const inMoney =
    material === 0
      ? 'Stock cost does not count.'
      : `A line an hour late matters as much as stock worth ${formatMoney((10_000 * lateness) / material, money)}.`;
  return [...inTime, inMoney];
}
