import { expect, it } from 'vitest';
import { brakeSteps } from '../../../core/report/brake-steps.ts';
import { aMaterial, aPart } from '../../support/builders.ts';
import { inches } from '../../support/writing.ts';

const basis = { girthRule: 'computed' as const, tools: [], dieOpeningMm: 8, units: inches };

it('every step at the brake says its angles, its direction and what lies at the gauge', () => {
  const steps = brakeSteps(aPart(), aMaterial(), aMaterial().gauges[0]!, basis);
  expect(steps.length).toBeGreaterThan(0);
  for (const { step, angle, gauged, figures, note, direction } of steps) {
    expect(['up', 'down']).toContain(direction);
    expect(angle).toMatch(step.startsWith('close') ? /flat|gap|eye/ : /turned, .* included/);
    if (step.startsWith('close')) expect(note).toBe('Closed under flat tools, not gauged.');
    else expect(gauged).toMatch(/ at the gauge$/);
    expect(figures === '').toBe(note !== '');
  }
});
