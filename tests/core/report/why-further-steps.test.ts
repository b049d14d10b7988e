import { expect, it } from 'vitest';
import { whyOf } from '../../../core/report/why.ts';
import { whyWords } from '../../../core/report/why-words.ts';
import { aBrake, aLine, anOrder, aPart, aShear, aShop, at, NOW } from '../../support/builders.ts';
import { aBench, aFurtherStep } from '../../support/further-step-builders.ts';
import { must } from '../schedule/hand-shop.ts';

const shop = aShop({
  part: [
    aPart({ steps: [aFurtherStep('notch'), aFurtherStep('outside', { days: 3 }), aFurtherStep('pack')] }),
  ],
  machine: [
    ...[aBrake(), aShear(), aBench()],
    aBench({ id: 'O1', name: 'Coater', stage: 'outside' }),
    aBench({ id: 'N1', name: 'Notcher', stage: 'notch' }),
  ],
  downtime: [],
  order: [anOrder({ due: at('2026-12-01') })],
  line: [aLine(), aLine({ number: 2 })],
});

it('why a line with further steps ends when it does: each step by its word, days away as such', () => {
  const { causes, changes } = whyWords(shop, must(whyOf(shop, '1042/2', NOW)));
  expect(causes.map(({ words }) => words)).toEqual([
    'Shear is closed',
    'Shear does 1042/1 first',
    'Shearing on Shear',
    'Notch or punch on Notcher',
    'Bending on Brake',
    'Outside work on Coater',
    'Packing on Packing bench',
  ]);
  expect(causes.find(({ words }) => words.startsWith('Outside'))?.seconds).toBe(3 * 86_400);
  // Nothing is gained by another place among what is away.
  expect(changes[0]?.title).toMatch(/^Move its shearing to position 1 .* and its packing to position 1/);
  expect(changes[0]?.title).not.toContain('Coater');
});
