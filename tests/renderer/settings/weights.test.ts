import { expect, it } from 'vitest';
import { defaultWeights, objectiveWeights } from '../../../core/shop/settings.ts';
import { presetOf, presets, weightsInWords } from '../../../renderer/screens/settings/weights.ts';
import { money, plainMoney } from '../../support/writing.ts';

it('a new shop has the priorities of one of the presets', () => {
  expect(presetOf(defaultWeights)?.id).toBe('balanced');
});

it('every preset can be saved, and they stand in order of what a changeover weighs', () => {
  for (const { weights } of presets) expect(objectiveWeights.safeParse(weights).success).toBe(true);
  const changeover = presets.map(({ weights }) => weights.changeover);
  expect(changeover).toEqual(changeover.toSorted((a, b) => a - b));
});

it('says a priority as the hours that matter as much as an hour late', () => {
  expect(
    weightsInWords({ lateness: 1, changeover: 10, flow: 0.5, stability: 0, material: 10 }, money('EUR')),
  ).toEqual([
    'A line an hour late matters as much as 6 min of changeover.',
    'A line an hour late matters as much as 2 h of a line lying in the shop.',
    'Stability does not count.',
    'A line an hour late matters as much as stock worth €10.00.',
  ]);
});

it('says so when being late does not count at all', () => {
  expect(
    weightsInWords({ lateness: 0, changeover: 1, flow: 0, stability: 0, material: 0 }, plainMoney),
  ).toEqual(['Being late does not count, only changeover.']);
});
