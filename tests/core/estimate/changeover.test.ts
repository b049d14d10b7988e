import { expect, it } from 'vitest';
import { byTools, defaultChangeover } from '../../../core/estimate/changeover.ts';

it('by tools, another gauge costs nothing and all else stays as the shop has it', () => {
  const own = {
    ...defaultChangeover('brake'),
    exceptions: [
      { attribute: 'gauge' as const, from: '24', to: '26', seconds: 60 },
      { attribute: 'profile' as const, from: 'cap', to: 'sill', seconds: 90 },
    ],
  };
  // 30 min and 10 min: common practice, no source.
  expect(byTools(own)).toEqual({
    combine: 'sum',
    attributes: { tools: 1800, hemming: 600, profile: 300, material: 180 },
    exceptions: [own.exceptions[1]],
  });
});

it('by tools, times that the shop has given for them stay', () => {
  const attributes = { tools: 600, gauge: 300 };
  expect(byTools({ combine: 'max', attributes, exceptions: [] }).attributes).toEqual({
    tools: 600,
    hemming: 600,
  });
});
